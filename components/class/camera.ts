/** A camera that reads QR codes: what it sees goes through a canvas to a decoder, in any browser that has a camera to give. */
import { decodeQR } from 'qr/decode.js';
import { sayError } from '../parts/say-error.ts';

/** Pixels across that are asked for: a code of forty answers has 120 squares across, and each needs some pixels (our choice). */
const WIDTH = 1280;

/** The camera at the back, or the one that there is. @throws when there is none, or it may not be used: see `sayNoCamera`. */
export function openCamera(): Promise<MediaStream> {
  return navigator.mediaDevices.getUserMedia({
    video: { facingMode: 'environment', width: { ideal: WIDTH } },
  });
}

/** A reader of codes: gives the text of the code that a screen shows now, or undefined where none can be read. */
export function codeReader(): (screen: HTMLVideoElement) => string | undefined {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return (screen) => {
    const { videoWidth: width, videoHeight: height } = screen;
    if (!pen || width === 0 || height === 0) return undefined;
    canvas.width = width;
    canvas.height = height;
    pen.drawImage(screen, 0, 0);
    try {
      return decodeQR(pen.getImageData(0, 0, width, height));
    } catch {
      // The decoder throws where there is no code: the next picture may have one.
      return undefined;
    }
  };
}

/** Reasons for which a browser gives no camera (W3C Media Capture and Streams, getUserMedia), in words. */
const REASONS: Readonly<Record<string, string>> = {
  NotAllowedError:
    'This page may not use the camera. Allow it in the settings of your browser, then press the button again',
  NotFoundError: 'No camera was found on this device',
  OverconstrainedError: 'No camera was found on this device',
  NotReadableError: 'Another program uses the camera. Close it, then press the button again',
};

/** Why there is no camera, and what to do. */
export function sayNoCamera(error: unknown): string {
  const name = error instanceof Error ? error.name : '';
  const why = REASONS[name] ?? `The camera did not start (${sayError(error)})`;
  return `${why}. Files and links can be marked without a camera.`;
}
