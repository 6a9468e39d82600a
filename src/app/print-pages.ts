/** Pages of SVG to a printer, one on each sheet of its own size. */
import type { PaperPage } from '../paper/page-svg.ts';

export const svgBlob = ({ svg }: PaperPage): Blob => new Blob([svg], { type: 'image/svg+xml' });

export async function loadImage(page: PaperPage): Promise<HTMLImageElement> {
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
