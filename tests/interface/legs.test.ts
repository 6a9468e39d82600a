// A document that is a chain, as the page works on it: one leg at a time, put back into the whole.
import { createRoot } from 'solid-js';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { changeBlock } from '../../src/document/edits.ts';
import { withSchedule } from '../../src/document/phases.ts';
import type { Engine } from '../../src/engine/engine.ts';
import { boardTable, twoBounces } from '../chain/files.ts';
import { readyEngine } from './ready-engine.ts';

let engine: Engine;
beforeAll(async () => {
  engine = await readyEngine();
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterAll(() => vi.unstubAllGlobals());

function onPage<T>(run: (page: Page) => T): T {
  const keeper: Services['keeper'] = {
    kept: undefined,
    write: async () => true,
    leave: () => {},
    check: async () => {},
    watch: () => {},
  };
  const services = {
    flying: engine,
    presets: {
      first: skills['back-straight-full'],
      standIn: skills['back-straight-full'],
      shapes,
      skills: [],
      athletes: [],
    },
    keeper,
    tools: [],
  } as unknown as Services;
  return createRoot((end) => {
    const done = run(createPage(services));
    Promise.resolve(done).finally(end);
    return done;
  });
}

test('a chain opens on its last flight, and every leg flies as what is shown', () =>
  onPage(({ doc, flight }) => {
    const chain = twoBounces();
    doc.readText('chain.json', JSON.stringify(chain));
    expect(doc.fileFault()).toBeUndefined();
    expect(doc.legCount()).toBe(2);
    expect(doc.leg()).toBe(1);
    expect(doc.chain()).toEqual(chain);
    expect(doc.file().phases.map(({ kind }) => kind)).toEqual(['contact', 'flight']);
    expect(flight.result().file).toBe(doc.file());
    const id = doc.id();
    doc.setLeg(0);
    expect(doc.leg()).toBe(0);
    expect(doc.id()).not.toBe(id);
    expect(doc.file().phases.map(({ kind }) => kind)).toEqual(['flight']);
    expect(flight.result().file).toBe(doc.file());
  }));

test('an edit of a leg changes that leg of the chain alone, in one step that undo takes back', () =>
  onPage(({ doc, flight }) => {
    const chain = twoBounces();
    doc.readText('chain.json', JSON.stringify(chain));
    const before = flight.result().flight.duration;
    doc.edit(changeBlock(withSchedule(doc.file(), { base: 'arch' }), 0, { arms: 'side' }), 'arch');
    const [first, link, second] = doc.chain().phases;
    expect(first).toEqual(chain.phases[0]);
    expect(link).toEqual(chain.phases[1]);
    expect(second).toHaveProperty('schedule.base', 'arch');
    doc.undo();
    expect(doc.chain()).toEqual(chain);
    expect(flight.result().flight.duration).toBe(before);
    doc.draft(withSchedule(doc.begin(), { base: 'arch' }));
    doc.draft(withSchedule(doc.begin(), { base: 'hollow' }));
    expect(doc.chain().phases[2]).toHaveProperty('schedule.base', 'hollow');
    expect(doc.abandon()).toBe(true);
    expect(doc.chain()).toEqual(chain);
  }));

test('what a leg begins with follows the leg before', () =>
  onPage(({ doc }) => {
    doc.readText('chain.json', JSON.stringify(twoBounces()));
    const arrives = (): unknown => doc.file().phases[0];
    const was = arrives();
    doc.setLeg(0);
    const flight = doc.file().phases[0];
    if (flight.kind !== 'flight' || !flight.takeoff?.velocityMPerS) throw new Error('a stated take-off');
    const velocityMPerS = { ...flight.takeoff.velocityMPerS, up: flight.takeoff.velocityMPerS.up - 0.5 };
    doc.edit({ ...doc.file(), phases: [{ ...flight, takeoff: { ...flight.takeoff, velocityMPerS } }] }, 'lower');
    doc.setLeg(1);
    expect(arrives()).not.toEqual(was);
    expect(arrives()).toMatchObject({ kind: 'contact', place: 'trampoline' });
  }));

test('a leg whose launch is computed elsewhere is shown when it is known', () =>
  onPage(async ({ doc, flight }) => {
    doc.readText('chain.json', JSON.stringify(boardTable()));
    expect(doc.fileFault()).toBeUndefined();
    await engine.ready(doc.file());
    expect(doc.leg()).toBe(1);
    expect(flight.result().file).toBe(doc.file());
    expect(flight.outcome().fault).toBeUndefined();
  }));

test('a chain with a fault in any leg is refused and loses nothing', () =>
  onPage(({ doc }) => {
    const was = doc.chain();
    const broken = boardTable();
    Object.assign(broken.phases[2], { schedule: { base: 'nosuch' } });
    doc.readText('bad.json', JSON.stringify(broken));
    expect(doc.fileFault()?.reason).toMatch(/nosuch/);
    expect(doc.chain()).toBe(was);
  }));
