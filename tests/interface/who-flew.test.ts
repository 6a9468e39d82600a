// Opening a skill brings its own athlete: who flew before is known until the next one is opened.
import { batch, createRoot, createSignal } from 'solid-js';
import { expect, test } from 'vitest';
import type { Athlete } from '../../sim/index.ts';
import { createWhoFlew } from '../../src/app/who-flew.ts';

const named = (name: string): Athlete => ({ kind: 'human', name, sex: 'female', massKg: 46, statureM: 1.52 });

test('another athlete by opening is said, the same one and one who was chosen are not', () => {
  createRoot((dispose) => {
    const [id, setId] = createSignal(1);
    const [athlete, setAthlete] = createSignal(named('Ada Roan'));
    const was = createWhoFlew({ id, athlete });
    const open = (name: string): void =>
      batch(() => {
        setId(id() + 1);
        setAthlete(named(name));
      });
    expect(was()).toBeUndefined();
    open('Bo Fell');
    expect(was()).toBe('Ada Roan');
    open('Bo Fell');
    expect(was()).toBeUndefined();
    setAthlete(named('Cy Tarn'));
    expect(was()).toBeUndefined();
    open('Bo Fell');
    expect(was()).toBe('Cy Tarn');
    // one who is chosen after that is not the skill's own
    setAthlete(named('Cy Tarn'));
    expect(was()).toBeUndefined();
    dispose();
  });
});
