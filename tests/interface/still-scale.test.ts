// Scales of the pictures when their room changes: a zoom made by the hand stays, and a line of text more or less fits nothing again.
import { createRoot, createSignal } from 'solid-js';
import { afterEach, describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { createLarge, type LargeStage } from '../../src/app/large.ts';
import { useFit } from '../../src/app/layout/steady.ts';
import { fitStage, type StageFit } from '../../src/app/stage-fit.ts';
import type { LargeLook } from '../../src/scene/large-look.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const flown = engine.fly(skills['back-straight-full'] as SkillFile);
const other = engine.fly(skills['back-tuck'] as SkillFile);

let dispose = (): void => {};
afterEach(() => dispose());

interface Bench {
  readonly large: LargeStage;
  look(): LargeLook;
  open(): void;
}

function openLarge(width: number, height: number): Bench {
  return createRoot((end) => {
    dispose = end;
    const [id, setId] = createSignal(1);
    const [result, setResult] = createSignal(flown);
    const large = createLarge({ result, id }, () => 0.3);
    large.resize(width, height);
    return {
      large,
      look: () => large.look() as LargeLook,
      open: () => {
        setResult(other);
        setId(2);
      },
    };
  });
}
const camera = ({ pxPerM, across, up }: LargeLook) => ({ pxPerM, across, up });

describe('the large stage in a room that changes', () => {
  it('keeps scale and middle of a zoom made by hand, whatever the room becomes', () => {
    const { large, look } = openLarge(1200, 500);
    large.zoom(1.8, 700, 200);
    large.pan(30, -12);
    const zoomed = camera(look());
    for (const [w, h] of [
      [1200, 478],
      [1200, 520],
      [900, 300],
      [1500, 700],
    ]) {
      large.resize(w, h);
      expect(camera(look())).toEqual(zoomed);
    }
  });

  it('fits the whole again when it is asked for, in the room that there is then', () => {
    const { large, look } = openLarge(1200, 500);
    large.zoom(1.8);
    large.resize(1200, 700);
    large.fit();
    const fitted = camera(look());
    dispose();
    const fresh = openLarge(1200, 700);
    expect(fitted).toEqual(camera(fresh.look()));
  });

  it('a zoom is of its document and its view', () => {
    const { large, look, open } = openLarge(1200, 500);
    large.zoom(1.8);
    large.setView('front');
    const front = camera(look());
    large.zoom(2);
    large.setView('side');
    large.setView('front');
    expect(camera(look())).toEqual(front);
    large.zoom(2);
    open();
    expect(look().pxPerM).not.toBeCloseTo(2 * front.pxPerM, 3);
  });

  it('keeps the fit while the room changes by less than a line of text, and fits a room of another size', () => {
    const { large, look } = openLarge(1200, 500);
    const fitted = camera(look());
    for (const h of [490, 478, 512, 522]) {
      large.resize(1200, h);
      expect(camera(look())).toEqual(fitted);
    }
    large.resize(1200, 440);
    expect(look().pxPerM).toBeLessThan(fitted.pxPerM);
  });
});

describe('the pictures above the floor in a room that changes', () => {
  function openFit(height: number) {
    return createRoot((end) => {
      dispose = end;
      const [id, setId] = createSignal(1);
      const [tall, setTall] = createSignal(height);
      const framing = useFit(
        id,
        () => ({ height: tall(), width: 9999 }),
        (room): StageFit => fitStage(flown, room, 130),
      );
      return { framing, setTall, setId };
    });
  }

  it('keep their scale within a line of text, in small steps too only so far', () => {
    const { framing, setTall } = openFit(264);
    const before = framing();
    for (const tall of [250, 243, 280, 264]) {
      setTall(tall);
      expect(framing()).toEqual(before);
    }
    for (const tall of [250, 243, 236, 230]) setTall(tall);
    expect(framing().pxPerM).toBeLessThan(before.pxPerM);
  });

  it('are fitted to the room that there is when another document comes', () => {
    const { framing, setTall, setId } = openFit(264);
    setTall(244);
    setId(2);
    expect(framing()).toEqual(fitStage(flown, { height: 244, width: 9999 }, 130));
  });
});
