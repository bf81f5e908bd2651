/** The browser's own reader of QR codes, where it has one. */

/** What it reads in a picture. */
interface Detector {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
}

/** A reader of QR codes; undefined where the browser has none, or no camera may be asked for. */
export function detectorOf(): Detector | undefined {
  const { BarcodeDetector: Made } = globalThis as {
    readonly BarcodeDetector?: new (options: { readonly formats: readonly string[] }) => Detector;
  };
  if (!Made || !('mediaDevices' in navigator)) return undefined;
  return new Made({ formats: ['qr_code'] });
}
