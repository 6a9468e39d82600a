// Our own flights filmed by cameras of several kinds, and measured as a person would: the frames are looked at, and keys are pressed. When the feet
// leave and meet the floor is read off the pictures alone; the flight that was filmed is known to the last line of each test only.
import { expect, type Page } from '@playwright/test';
import { standCamera, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import type { ClipOrder } from '../clips/clip-order.ts';
import { filmShapes } from '../clips/flight-shapes.ts';
import { knownFlight } from '../clips/known-flight.ts';
import { makeClip } from '../clips/made-clip.ts';
import { test } from './kept-files.ts';

interface Filmed {
  readonly name: string;
  readonly tag: string;
  readonly skill: string;
  /** frames really taken in a second */
  readonly hz: number;
  /** frames a second that the file plays */
  readonly fileHz: number;
  /** deg */
  readonly offSquare: number;
  /** m */
  readonly away: number;
  readonly codec: ClipOrder['codec'];
  /** s */
  readonly shutter?: number;
  readonly lines?: number;
  /** frames come early or late by this share of a frame */
  readonly uneven?: number;
  /** the camera was held head down, and the file says so */
  readonly isTurned?: boolean;
  readonly noise?: number;
}

const FILMS: readonly Filmed[] = [
  {
    name: '30 a second, uneven, with noise, held head down',
    tag: '@desktop @whole',
    skill: 'back-straight',
    hz: 30,
    fileHz: 30,
    offSquare: 12,
    away: 6.5,
    codec: 'vp9',
    uneven: 0.2,
    isTurned: true,
    noise: 5,
  },
  {
    name: '60 a second, square on, blurred',
    tag: '@desktop @whole',
    skill: 'back-tuck',
    hz: 60,
    fileHz: 60,
    offSquare: 0,
    away: 7,
    codec: 'avc',
    shutter: 1 / 120,
    noise: 5,
  },
  {
    name: '120 a second, played at 30, read line by line, from far off square',
    tag: '@desktop @whole',
    skill: 'front-tuck',
    hz: 120,
    fileHz: 30,
    offSquare: 25,
    away: 6,
    codec: 'vp8',
    lines: 0.006,
    noise: 3,
  },
];

const BEFORE = 7;
const AFTER = 6;
const WIDE = 640;
const SOON = { timeout: 60_000 };

async function makeFilm(page: Page, film: Filmed) {
  const flight = knownFlight(film.skill);
  const frames = BEFORE + Math.ceil(flight.duration * film.hz) + AFTER;
  const times = Array.from(
    { length: frames },
    (_, k) => (k - BEFORE + 0.37 + (film.uneven ?? 0) * Math.sin(2.4 * k)) / film.hz,
  );
  const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
  const middle = [(flight.v_WScm_W0[0] * flight.duration) / 2, 1.5, 0] as [number, number, number];
  const stood = standCamera(
    {
      ...USUAL_CAMERA,
      away: film.away,
      offSquare: film.offSquare * (Math.PI / 180),
      view: 56 * (Math.PI / 180),
      width: WIDE,
      height: 360,
    },
    { middle, floorY: flight.surfaceY, way },
  );
  const flip = (v: readonly number[]) => v.map((x) => -x) as [number, number, number];
  const sightline = film.isTurned ? { ...stood, right: flip(stood.right), up: flip(stood.up) } : stood;
  const { shutter, lines, noise } = film;
  const shapes = filmShapes(flight, { sightline, times, shutter, lines, instants: 3, bands: 6 });
  const buffer = await makeClip(page, {
    ...shapes,
    codec: film.codec,
    stampsS: times.map((t) => ((t - times[0]) * film.hz) / film.fileHz),
    rotation: film.isTurned ? 180 : 0,
    ...(noise === undefined ? {} : { noise }),
  });
  return { flight, frames, file: { name: 'own.webm', mimeType: 'video/webm', buffer } };
}

/** Grey of each px of the frame that is shown. */
const look = (page: Page): Promise<{ width: number; grey: string }> =>
  page.locator('.clip-plate canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { width, height } = canvas;
    const { data } = canvas.getContext('2d')?.getImageData(0, 0, width, height) ?? { data: [] };
    let grey = '';
    for (let i = 0; i < data.length; i += 4)
      grey += String.fromCharCode(Math.round((data[i] + data[i + 1] + data[i + 2]) / 3));
    return { width, grey };
  });

async function lookAtAll(page: Page, frames: number) {
  const seen: { width: number; grey: string }[] = [];
  await page.keyboard.press('Home');
  for (let k = 0; k < frames; k++) {
    await expect(page.locator('.clip-plate canvas')).toHaveAttribute('data-frame', String(k));
    seen.push(await look(page));
    await page.keyboard.press('.');
  }
  return seen;
}

/** px, of the lowest part of what moves in each frame: against what a px is in most frames. */
function lowest(seen: readonly { width: number; grey: string }[]): number[] {
  const { width } = seen[0];
  const px = seen[0].grey.length;
  const spread = Array.from({ length: 9 }, (_, i) => Math.round((i * (seen.length - 1)) / 8));
  const still = new Uint8Array(px);
  for (let i = 0; i < px; i++) {
    const values = spread.map((k) => seen[k].grey.charCodeAt(i)).sort((a, b) => a - b);
    still[i] = values[4];
  }
  return seen.map(({ grey }) => {
    for (let row = Math.floor(px / width) - 1; row >= 0; row--) {
      let there = 0;
      for (let i = row * width; i < (row + 1) * width; i++) if (Math.abs(grey.charCodeAt(i) - still[i]) > 26) there++;
      if (there >= 3) return row;
    }
    return 0;
  });
}

/** First frame off the floor, and first frame on it again: where the feet leave, and come to, where they rest. */
function readEnds(rows: readonly number[]): readonly [number, number] {
  const middle = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
  const before = middle(rows.slice(0, BEFORE - 1));
  const after = middle(rows.slice(-AFTER + 1));
  const top = rows.indexOf(Math.min(...rows));
  const off = rows.findLastIndex((row, k) => k < top && row >= before - 1) + 1;
  const on = rows.findIndex((row, k) => k > top && row >= after - 1);
  return [off, on];
}

async function goTo(page: Page, frame: number): Promise<void> {
  await page.keyboard.press('Home');
  for (let k = 0; k < frame; k++) await page.keyboard.press('.');
  await expect(page.locator('.clip-plate canvas')).toHaveAttribute('data-frame', String(frame));
}

for (const film of FILMS)
  test(`the air time is read to a frame: ${film.name}`, { tag: film.tag.split(' ') }, async ({ page }) => {
    const { flight, frames, file } = await makeFilm(page, film);
    await page.goto(`./?skill=${film.skill}`);
    await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
    await page.keyboard.press('i');
    await page.getByRole('tab', { name: 'Clip' }).click();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open a clip' }).click(SOON);
    await (await chooser).setFiles(file);
    await page.getByRole('button', { name: String(film.hz), exact: true }).click(SOON);
    const [off, on] = readEnds(lowest(await lookAtAll(page, frames)));
    await goTo(page, off);
    await page.keyboard.press('m');
    await goTo(page, on);
    await page.getByRole('combobox', { name: 'Mark another' }).selectOption({ label: 'landing' });
    const row = page.getByRole('row', { name: /^Air time/ });
    const [value, error] = (await row.getByRole('cell').allTextContents()).map((text) =>
      Number(/[\d.]+/.exec(text)?.[0]),
    );
    expect(error).toBeLessThan(1.2 / film.hz);
    expect(Math.abs(value - flight.duration)).toBeLessThan(1 / film.hz);
  });
