/** Reading a two-dimensional code from a picture of a page: its pixels by way of a canvas, then a decoder that the site does not use. */
import type { Browser } from '@playwright/test';
import jsQR from 'jsqr';

/** The text in the code on a picture (PNG bytes), or undefined when none can be read. */
export async function readSquareCode(browser: Browser, png: Buffer): Promise<string | undefined> {
  const page = await browser.newPage();
  try {
    const { width, height, pixels } = await page.evaluate(async (base64) => {
      const picture = new Image();
      picture.src = `data:image/png;base64,${base64}`;
      await picture.decode();
      const canvas = new OffscreenCanvas(picture.width, picture.height);
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('canvas: needs a 2d context, got none');
      pen.drawImage(picture, 0, 0);
      const { data } = pen.getImageData(0, 0, picture.width, picture.height);
      // The code is black on white, so one of the three colours tells; letters travel faster than a list of numbers.
      const reds = Array.from({ length: data.length / 4 }, (_, at) => String.fromCharCode(data[4 * at] ?? 0));
      return { width: picture.width, height: picture.height, pixels: btoa(reds.join('')) };
    }, png.toString('base64'));
    // The package hands its one function over in two ways, and which of them counts depends on who loads it.
    const decode = (
      typeof jsQR === 'function' ? jsQR : (jsQR as { default: typeof jsQR }).default
    ) as typeof jsQR;
    const reds = Buffer.from(pixels, 'base64');
    const full = new Uint8ClampedArray(4 * reds.length).fill(255);
    reds.forEach((red, at) => full.fill(red, 4 * at, 4 * at + 3));
    return decode(full, width, height)?.data;
  } finally {
    await page.close();
  }
}
