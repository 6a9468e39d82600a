/** Pages of SVG to a printer or into files: printed one on each sheet of its own size, PNG at 300 dpi. */
import { fileName, saveBlob } from '../../app/file-door.ts';
import type { PaperPage } from '../../paper/page-svg.ts';

const PNG_DPI = 300;

export const svgBlob = ({ svg }: PaperPage): Blob => new Blob([svg], { type: 'image/svg+xml' });

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

async function loadImage(page: PaperPage): Promise<HTMLImageElement> {
  const image = new Image();
  image.src = URL.createObjectURL(svgBlob(page));
  await image.decode();
  return image;
}

let laid: HTMLElement | undefined;

/** What was laid out stays until the next is, or until it is taken away: a browser may read it after `print` came back. */
export async function printPages(pages: readonly PaperPage[]): Promise<void> {
  clearPages();
  const [{ widthMm, heightMm }] = pages;
  const images = await Promise.all(pages.map(loadImage));
  const place = document.createElement('div');
  place.className = 'paper-out';
  const style = document.createElement('style');
  style.textContent = `@page { size: ${widthMm}mm ${heightMm}mm; margin: 0; }`;
  place.append(style);
  for (const image of images) {
    image.alt = '';
    image.style.width = `${widthMm}mm`;
    // a hair less than the sheet: rounding must not make another of it
    image.style.height = `${heightMm - 0.2}mm`;
    place.append(image);
  }
  document.body.append(place);
  laid = place;
  print();
}

export function clearPages(): void {
  for (const image of laid?.querySelectorAll('img') ?? []) URL.revokeObjectURL(image.src);
  laid?.remove();
  laid = undefined;
}
