// Clips as the product opens them: each frame is the one it says it is, whatever becomes of the file; nothing is kept, and memory is bounded.
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import { build } from 'vite';
import type { ClipOrder } from '../clips/clip-order.ts';
import { codedClip } from '../clips/coded-picture.ts';
import { listHostile } from '../clips/hostile.ts';
import { makeClip } from '../clips/made-clip.ts';
import type { ReadClip } from './in-page/clip-lab.ts';
import { test } from './kept-files.ts';

const root = path.resolve(import.meta.dirname, '../..');
const MOST_BYTES = 96 * 2 ** 20;

let code: Promise<string> | undefined;
async function bundle(): Promise<string> {
  const out = await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      rolldownOptions: { output: { codeSplitting: false } },
      lib: { entry: path.join(import.meta.dirname, 'in-page/clip-lab.ts'), formats: ['iife'], name: 'clipLab' },
    },
  });
  const outputs = (Array.isArray(out) ? out : [out]).flatMap((one) => ('output' in one ? one.output : []));
  return outputs.find((one) => one.type === 'chunk')?.code ?? '';
}

/** A page of its own, trusted as the product's is. */
async function openLab(page: Page): Promise<void> {
  code ??= bundle();
  const body = await code;
  await page.route('https://lab.invalid/**', (route) =>
    route.request().url().endsWith('.js')
      ? route.fulfill({ contentType: 'text/javascript; charset=utf-8', body })
      : route.fulfill({ contentType: 'text/html', body: '<!doctype html><script src="lab.js"></script>' }),
  );
  await page.goto('https://lab.invalid/');
}

const read = (page: Page, bytes: Buffer, name: string, order?: readonly number[]): Promise<ReadClip> =>
  page.evaluate(([base64, called, asked]) => window.clipLab.lab.read(base64, called, asked), [
    bytes.toString('base64'),
    name,
    order,
  ] as const);

const evenly = (count: number, hz: number): number[] => Array.from({ length: count }, (_, k) => k / hz);

/** Every picture that came is the one that it says it is, and nothing is kept of it. */
function expectTrue(clip: ReadClip, name: string): void {
  expect(
    clip.seen.filter(({ said, drawn }) => said !== drawn),
    name,
  ).toEqual([]);
  expect([clip.left, clip.held], `${name}: left`).toEqual([0, 0]);
}

test('each frame of each kind of file is the one that was asked for', { tag: '@once' }, async ({ page }) => {
  await openLab(page);
  const uneven = evenly(24, 30).map((t, k) => t + (k % 5 === 2 ? 0.011 : 0));
  const kinds: readonly (Partial<ClipOrder> & Pick<ClipOrder, 'codec' | 'stampsS'>)[] = [
    { codec: 'vp8', stampsS: evenly(24, 30) },
    { codec: 'vp9', stampsS: evenly(24, 60), rotation: 90, container: 'mp4' },
    { codec: 'avc', stampsS: evenly(40, 240), rotation: 180 },
    { codec: 'av1', stampsS: evenly(12, 30), rotation: 270 },
    { codec: 'avc', stampsS: evenly(24, 30), rotation: 90, container: 'mov' },
    { codec: 'vp8', stampsS: evenly(40, 240) },
    { codec: 'vp8', stampsS: uneven },
    { codec: 'avc', stampsS: uneven.map((t) => t + 5) },
    { codec: 'vp8', stampsS: [0] },
  ];
  for (const kind of kinds) {
    const name = `${kind.codec} ${kind.container ?? ''} ${kind.rotation ?? 0} of ${kind.stampsS.length}`;
    const clip = await read(page, await makeClip(page, codedClip({ keyEvery: 10, ...kind })), 'clip');
    expect(clip.fault, name).toBeUndefined();
    expectTrue(clip, name);
    expect(
      clip.seen.filter(({ asked, said }) => asked !== said),
      name,
    ).toEqual([]);
    const n = kind.stampsS.length;
    expect(clip.seen.length, name).toBe(2 * n);
    const turned = (kind.rotation ?? 0) % 180 !== 0;
    expect([clip.facts?.width, clip.facts?.height], name).toEqual(turned ? [64, 96] : [96, 64]);
    expect(clip.size, name).toEqual(turned ? [64, 96] : [96, 64]);
    expect(clip.facts?.turnedDeg, name).toBe(kind.rotation ?? 0);
    expect(clip.isVariable, name).toBe(
      kind.stampsS.some((t) => uneven.includes(t) && !evenly(24, 30).includes(t)) || kind.stampsS[0] === 5,
    );
    // WebM has whole milliseconds
    const off = Math.max(...(clip.stamps ?? []).map((t, k) => Math.abs(t - (kind.stampsS[k] - kind.stampsS[0]))));
    expect(off, name).toBeLessThan(kind.codec === 'vp8' ? 1.01e-3 : 2e-4);
    const hz = n > 1 ? (n - 1) / (kind.stampsS[n - 1] - kind.stampsS[0]) : 0;
    expect(Math.abs((clip.facts?.fileHz ?? -1) - hz), name).toBeLessThanOrEqual(0.005 * hz);
  }
  for (const [kind, orientation] of [['image/png'], ['image/jpeg'], ['image/jpeg', 6]] as const) {
    const base64 = await page.evaluate(([k, o]) => window.clipLab.lab.still(k, 1234, o), [kind, orientation] as const);
    const clip = await read(page, Buffer.from(base64, 'base64'), 'photo');
    expect(
      clip.seen.map(({ drawn }) => drawn),
      `${kind} ${orientation}`,
    ).toEqual([1234, 1234]);
    expect(clip.size, kind).toEqual(orientation ? [64, 80] : [80, 64]);
    expect([clip.facts?.kind, clip.facts?.fileHz, clip.held], kind).toEqual(['still', 0, 0]);
  }
});

test('what is damaged, odd or no clip ends in frames that are true, or in a fault with a code', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openLab(page);
  const order = { stampsS: evenly(24, 10), keyEvery: 8, bitsPerPx: 4 };
  const hostile = listHostile({
    webm: await makeClip(page, codedClip({ codec: 'vp8', ...order })),
    mp4: await makeClip(page, codedClip({ codec: 'avc', ...order })),
    vp9: await makeClip(page, codedClip({ codec: 'vp9', container: 'mp4', ...order })),
    fragmented: await makeClip(page, codedClip({ codec: 'avc', container: 'fragmented', ...order })),
    png: Buffer.from(await page.evaluate(() => window.clipLab.lab.still('image/png', 0)), 'base64'),
  });
  expect(hostile.length).toBeGreaterThanOrEqual(30);
  for (const { name, file, bytes, becomes, shows, isGarbled } of hostile) {
    const clip = await read(page, bytes, file);
    const now = clip.fault ?? 'frames';
    expect.soft(becomes, name).toContain(now);
    expect
      .soft(
        clip.seen.filter(({ said, drawn }) => shows(said) !== drawn && !(isGarbled && drawn < 0)),
        name,
      )
      .toEqual([]);
    expect.soft([clip.left, clip.held], `${name}: left`).toEqual([0, 0]);
  }
});

test('steps on, back and anywhere show their frames within a bound of bytes, and a hand that drags is followed', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openLab(page);
  // frames of 1.2 MB: the bound is reached
  const order = { width: 640, height: 480, stampsS: evenly(150, 60), keyEvery: 75, bitsPerPx: 0.1 };
  const bytes = await makeClip(page, codedClip({ codec: 'vp8', ...order }));
  const walked = await page.evaluate((base64) => window.clipLab.lab.walk(base64, 3000), bytes.toString('base64'));
  expect(walked.wrong).toBe(0);
  expect(walked.givenUp).toBeGreaterThan(0);
  expect(walked.mostBytes).toBeLessThanOrEqual(MOST_BYTES);
  expect(walked.mostBytes).toBeGreaterThan(0.9 * MOST_BYTES);
  expect(walked.mostFrames).toBeLessThan(64);
  expect(walked.decoded).toBeGreaterThan(order.stampsS.length);
  expect(walked.left).toBe(0);
});

test('what is written again has its own times and nothing else of the file, and what is blurred stays so', {
  tag: '@once',
}, async ({ page }) => {
  await openLab(page);
  const stampsS = evenly(30, 60).map((t, k) => t + (k > 20 ? 0.05 : 0));
  const whole = await makeClip(
    page,
    codedClip({ codec: 'avc', width: 480, height: 320, stampsS, rotation: 90, title: 'Ilse at the club' }),
  );
  expect(whole.includes('Ilse at the club')).toBe(true);
  const write = (isBlurred: boolean, most: number) =>
    page.evaluate(([base64, blurred, px]) => window.clipLab.lab.write(base64, 5, 25, blurred, px), [
      whole.toString('base64'),
      isBlurred,
      most,
    ] as const);
  const written = await write(false, 400);
  const bytes = Buffer.from(written.base64, 'base64');
  expect(bytes.includes('Ilse')).toBe(false);
  const again = await read(page, bytes, 'again');
  expect(again.seen.map(({ drawn }) => drawn - 5)).toEqual(again.seen.map(({ asked }) => asked));
  expect(again.seen.length).toBe(42);
  expect([again.facts?.width, again.facts?.height]).toEqual([268, 400]);
  const most = written.type === 'video/mp4' ? 2e-4 : 1.01e-3;
  for (const [k, t] of (again.stamps ?? []).entries())
    expect(Math.abs(t - (stampsS[k + 5] - stampsS[5]))).toBeLessThan(most);
  expect(written.made).toEqual(Array.from({ length: 21 }, (_, k) => k + 1));

  const sharpness = (base64: string, isBlurred: boolean) =>
    page.evaluate(([b, blurred]) => window.clipLab.lab.sharpness(b, blurred), [base64, isBlurred] as const);
  const sharp = await sharpness(whole.toString('base64'), false);
  const blurred = await sharpness(whole.toString('base64'), true);
  // an edge of a block is spread over the few px that all goes through: a thirteenth of the picture's width
  expect(blurred).toBeLessThan(sharp / 3);
  const unblurred = await sharpness(written.base64, false);
  expect(await sharpness((await write(true, 400)).base64, false)).toBeLessThan(unblurred / 3);
});

test('the camera of the machine makes a clip, is off when it is over, and one that is refused is a fault', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openLab(page);
  const filmed = await page.evaluate(() => window.clipLab.lab.film());
  expect(filmed.none).toBe('noCamera notAllowed');
  expect(filmed.name).toMatch(/^filmed-here\.(mp4|webm)$/);
  expect(filmed.frames).toBeGreaterThan(3);
  expect([filmed.live, filmed.aborted]).toEqual([['ended'], ['ended']]);
});
