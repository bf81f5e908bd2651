/** A histogram as plain boxes on a line, with marks. */
import { along } from './along.ts';

/** Counts in even steps from `from` to `to`. */
interface HistogramInput {
  readonly width: number;
  readonly height: number;
  readonly from: number;
  readonly to: number;
  readonly counts: readonly number[];
  readonly marks: readonly number[];
}

/** Boxes with their left top corner, and the place of each mark; pixels. */
interface HistogramDrawing {
  readonly bars: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly count: number;
  }[];
  readonly marks: readonly number[];
}

/** Draw a histogram, its highest bar as high as `height`. */
export function drawHistogram({ width, height, from, to, counts, marks }: HistogramInput): HistogramDrawing {
  const place = along(to - from, 0, width);
  const most = Math.max(1, ...counts);
  const step = width / counts.length;
  return {
    bars: counts.map((count, at) => {
      const high = (height * count) / most;
      return { x: at * step, y: height - high, width: Math.max(1, step - 1), height: high, count };
    }),
    marks: marks.map((one) => place(one - from)),
  };
}
