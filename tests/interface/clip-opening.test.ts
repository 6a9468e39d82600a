// A camera of the page runs while it is shown, and no longer; a clip that fails leaves what was open.
import { createRoot } from 'solid-js';
import { expect, test } from 'vitest';
import type { ClipReading, ClipSpan, OpenClip } from '../../src/clip/clip-source.ts';
import { type ClipOpening, makeClipOpening } from '../../src/features/film/clip-opening.ts';

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const SPAN: ClipSpan = { stamps: Float64Array.of(0, 0.1), lastLasts: 0.1, isVariable: false };

function clipOf({ name, size }: File): OpenClip {
  return {
    facts: {
      name,
      bytes: size,
      kind: 'moving',
      codec: 'vp9',
      width: 320,
      height: 180,
      turnedDeg: 0,
      lasts: 0.2,
      fileHz: 10,
    },
    span: async () => ({ ...SPAN, isCut: false }),
    picture: async () => Promise.reject(new Error('not asked for')),
    held: () => ({ pictures: 0, bytes: 0 }),
    close: () => {},
  };
}

/** What a camera does: it runs until it is stopped, or until the one who asked no longer wants it. */
function openWith(run: (opening: ClipOpening, camera: { isOn: boolean }) => Promise<void>): Promise<void> {
  const camera = { isOn: false };
  const reader: ClipReading = {
    open: async (file) => {
      if (file.size === 0) throw Object.assign(new Error('empty'), { name: 'ClipFault', code: 'empty' });
      return clipOf(file);
    },
    write: async () => Promise.reject(new Error('not asked for')),
    drawBlurred: () => {},
    film: async (signal) => {
      camera.isOn = true;
      signal.addEventListener('abort', () => {
        camera.isOn = false;
      });
      return {
        live: {} as MediaStream,
        stop: async () => {
          camera.isOn = false;
          signal.throwIfAborted();
          return new File(['film'], 'filmed-here.webm');
        },
      };
    },
  };
  return createRoot(async (dispose) => {
    await run(
      makeClipOpening(
        async () => ({ reader }),
        () => {},
        () => {},
      ),
      camera,
    );
    dispose();
  });
}

test('a camera that is cancelled is off, and nothing it filmed is opened', () =>
  openWith(async (opening, camera) => {
    opening.film();
    await settled();
    expect([camera.isOn, opening.live() !== undefined]).toEqual([true, true]);
    opening.cancel();
    expect([camera.isOn, opening.live()]).toEqual([false, undefined]);
    opening.stopFilm();
    await settled();
    expect([opening.opened(), opening.fault()]).toEqual([undefined, undefined]);
  }));

test('what it filmed until it was stopped is opened', () =>
  openWith(async (opening, camera) => {
    opening.film();
    await settled();
    opening.stopFilm();
    await settled();
    expect([camera.isOn, opening.live(), opening.opened()?.clip.facts.name]).toEqual([
      false,
      undefined,
      'filmed-here.webm',
    ]);
  }));

test('another clip ends the camera; one that fails leaves what was open', () =>
  openWith(async (opening, camera) => {
    opening.film();
    await settled();
    opening.open(new File(['clip'], 'first.mp4'));
    await settled();
    expect([camera.isOn, opening.live(), opening.opened()?.clip.facts.name]).toEqual([false, undefined, 'first.mp4']);
    opening.open(new File([], 'none.mp4'));
    await settled();
    expect(opening.opened()?.clip.facts.name).toBe('first.mp4');
    expect(opening.fault()).toContain('none.mp4 is empty');
  }));
