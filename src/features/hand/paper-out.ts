/** Pages of SVG into files, PNG at 300 dpi. */
import { fileName, saveBlob } from '../../app/file-door.ts';
import { loadImage, svgBlob } from '../../app/print-pages.ts';
import type { PaperPage } from '../../paper/page-svg.ts';
import type { Paper } from '../../paper/paper.ts';

const PNG_DPI = 300;

export const saveSvg = (title: string, what: string, page: PaperPage): void =>
  saveBlob(nameOf(title, what, 'svg'), svgBlob(page));

export const savePng = async (title: string, what: string, page: PaperPage, paper: Paper): Promise<void> =>
  saveBlob(nameOf(title, what, 'png'), await drawPng(page, paper));

const nameOf = (title: string, what: string, kind: string): string =>
  `${fileName(title).replace(/\.json$/, '')}-${what}.${kind}`;

/** A band a task: in one go a wall of paper would hold the page, and be too large for the canvas of many devices. */
async function drawPng(page: PaperPage, { greyPng, bandsOf }: Paper): Promise<Blob> {
  const image = await loadImage(page);
  try {
    const [width, height] = [page.widthMm, page.heightMm].map((mm) => Math.round((mm / 25.4) * PNG_DPI));
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = bandsOf({ width, height })[0];
    const g = canvas.getContext('2d', { willReadFrequently: true });
    if (!g) throw new Error('no canvas');
    return await greyPng({ width, height, dpi: PNG_DPI }, async (top, rows) => {
      await new Promise((resolve) => setTimeout(resolve));
      g.drawImage(image, 0, -top, width, height);
      const { data } = g.getImageData(0, 0, width, rows);
      // white lies under everything and all inks are grey: one channel is all
      const greys = new Uint8Array(width * rows);
      for (let i = 0; i < greys.length; i++) greys[i] = data[4 * i];
      return greys;
    });
  } finally {
    URL.revokeObjectURL(image.src);
  }
}
