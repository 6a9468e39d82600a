/** Files made from the flight: the frames as CSV, the print sheet's picture as SVG or PNG with caution and title. */

import { fileName, saveBlob } from '../../app/file-door.ts';
import type { Page } from '../../app/page.ts';
import { makeContent, type PrintContent } from '../../app/sheet-content.ts';
import { printTexts } from '../../app/sheet-words.ts';
import { texts } from '../../app/words.ts';
import type { Paper } from '../../paper/paper.ts';

const t = printTexts;
const stem = (page: Page): string => fileName(page.doc.file().title).replace(/\.json$/, '');

export async function saveCsv(page: Page): Promise<void> {
  const { services, flight, shell } = page;
  const ports = await services.load.print();
  const name = t.file.frames(stem(page));
  saveBlob(name, new Blob([ports.formatFrames(flight.result())], { type: 'text/csv' }));
  shell.notify({ text: t.savedCsv(name) });
}

export async function savePicture(page: Page, kind: 'svg' | 'png'): Promise<void> {
  const { services, shell } = page;
  const [ports, { textWidth }] = await Promise.all([services.load.print(), services.load.paper()]);
  const picture = formatPicture(makeContent(page, ports, new Date()), ports.tokens, textWidth);
  const name = t.file.picture(stem(page), kind);
  const svg = new Blob([picture.svg], { type: 'image/svg+xml' });
  try {
    saveBlob(name, kind === 'svg' ? svg : await rasterize(svg, picture.width, picture.height));
    shell.notify({ text: t.savedPicture(name) });
  } catch {
    shell.notify({ text: t.noPicture });
  }
}

const escapeText = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');

const MARGIN = 30;
const HEAD = 92;
const FOOT = 46;

/** A picture complete in itself: its colours and its words are in it. */
export function formatPicture(
  c: PrintContent,
  tokens: Readonly<Record<string, string>>,
  textWidth: Paper['textWidth'],
): { svg: string; width: number; height: number } {
  const width = c.picture.width + 2 * MARGIN;
  const height = c.picture.height + HEAD + FOOT;
  const colours = Object.entries(tokens)
    .map(([name, value]) => `--${name}:${value}`)
    .join(';');
  const words = (x: number, y: number, size: number, text: string, weight = 450, anchor = 'start'): string =>
    `<text x="${x}" y="${y}" font-size="${size}" font-weight="${weight}" text-anchor="${anchor}">${escapeText(text)}</text>`;
  // long lines are made to fit
  const fitted = (x: number, y: number, size: number, text: string, weight?: number): string =>
    words(x, y, Math.min(size, (width - 2 * MARGIN) / textWidth(text, 1, weight ?? 450)), text, weight);
  const caution = c.caution ? ` ${t.caution} ${c.caution}` : '';
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="'Radio Canada', 'Noto Sans', 'DejaVu Sans', sans-serif">`,
    `<title>${escapeText(`${c.skill}: ${c.sentence}`)}</title>`,
    `<style>svg{${colours}}</style>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    words(MARGIN, 26, 12.5, c.skill, 640),
    words(width - MARGIN, 26, 12.5, [c.who, c.dated].join(' · '), 450, 'end'),
    fitted(MARGIN, 56, 24, c.sentence, 560),
    fitted(MARGIN, 78, 12, `${c.likelihood && `${c.likelihood} `}${t.takeoff} ${c.takeoff}.${caution}`),
    `<g transform="translate(${MARGIN} ${HEAD})">${c.picture.markup}</g>`,
    fitted(MARGIN, height - 26, 11, `${c.key} ${texts.product}`),
    fitted(MARGIN, height - 10, 11, `${texts.compared} ${texts.standingCaution}`),
    '</svg>\n',
  ].join('\n');
  return { svg, width, height };
}

const PNG_SCALE = 2;

async function rasterize(svg: Blob, width: number, height: number): Promise<Blob> {
  const url = URL.createObjectURL(svg);
  try {
    const image = new Image(width, height);
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width * PNG_SCALE;
    canvas.height = height * PNG_SCALE;
    const g = canvas.getContext('2d');
    if (!g) throw new Error('no canvas');
    g.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture'))), 'image/png');
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}
