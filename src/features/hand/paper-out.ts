/** Pages of SVG into files, PNG at 300 dpi. */
import { fileName, saveBlob } from '../../app/file-door.ts';
import { loadImage, svgBlob } from '../../app/print-pages.ts';
import type { PaperPage } from '../../paper/page-svg.ts';

const PNG_DPI = 300;

export const saveSvg = (title: string, what: string, page: PaperPage): void =>
  saveBlob(nameOf(title, what, 'svg'), svgBlob(page));

export const savePng = async (title: string, what: string, page: PaperPage): Promise<void> =>
  saveBlob(nameOf(title, what, 'png'), await drawPng(page));

const nameOf = (title: string, what: string, kind: string): string =>
  `${fileName(title).replace(/\.json$/, '')}-${what}.${kind}`;

async function drawPng(page: PaperPage): Promise<Blob> {
  const image = await loadImage(page);
  try {
    const canvas = document.createElement('canvas');
    canvas.width = Math.round((page.widthMm / 25.4) * PNG_DPI);
    canvas.height = Math.round((page.heightMm / 25.4) * PNG_DPI);
    const g = canvas.getContext('2d');
    if (!g) throw new Error('no canvas');
    g.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture'))), 'image/png');
    });
  } finally {
    URL.revokeObjectURL(image.src);
  }
}
