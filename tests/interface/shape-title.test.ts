/** A shape is called after how it is held: its arms where they are, whatever the ready shape has. */
import { describe, expect, it } from 'vitest';
import { shapes } from '../../presets/index.ts';
import { titleOf } from '../../src/document/shape-title.ts';
import { getSpans } from '../../src/document/spans.ts';
import { fileOf } from '../skill/load.ts';

const spansOf = (id: string) => getSpans(fileOf(id), shapes, { apex: 0.4, touchdown: 0.9 });

describe('the title of a shape', () => {
  it('is its own where nothing, or nothing of the arms, was changed', () => {
    for (const data of Object.values(shapes)) {
      expect(titleOf(data, {})).toBe(data.title);
      expect(titleOf(data, { hipFlexion: 20 })).toBe(data.title);
    }
  });
  it('of a ready skill has the arms where they are', () => {
    expect(spansOf('arms-in-spin').at(-1)?.title).toBe('Landing, knees and hips bent, arms out to the sides');
    expect(spansOf('back-straight-full').map(({ title }) => title)).toEqual([
      'Straight, arms overhead',
      'Wrapped to twist left, left arm below',
      'Straight, left arm low, right arm out to the side',
      'Landing, knees and hips bent, arms out to the sides',
    ]);
  });
  it.each([
    [{ shoulderElevation: 5 }, 'arms at the sides'],
    [{ shoulderElevation: 90, shoulderPlane: 90 }, 'arms forward'],
    [{ shoulderElevation: 140, shoulderPlane: 80 }, 'arms up and forward'],
    [{ shoulderElevationL: 175 }, 'left arm overhead, right arm forward'],
  ])('%o is said', (adjusted, arms) => {
    expect(titleOf(shapes.landing, adjusted)).toBe(`Landing, knees and hips bent, ${arms}`);
  });
  it('keeps the word of hands where an arm is bent', () => {
    expect(titleOf(shapes.tuck, { shoulderElevation: 50 })).toBe(shapes.tuck.title);
  });
});
