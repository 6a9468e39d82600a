// What an address asks of the page, and how rows are written into it.
import { describe, expect, test } from 'vitest';
import { readAddress, withoutSkill, writeHall, writeRows } from '../../src/app/address.ts';
import { createRows, ROW_NAMES } from '../../src/app/rows.ts';

describe('the address', () => {
  test('names rows, the skill and the hall; what it does not know is passed over', () => {
    const asked = readAddress('?skill=back-tuck&rows=tilt,energy,nonsense&hall=1');
    expect(asked.skill).toBe('back-tuck');
    expect([...asked.rows].sort()).toEqual(['energy', 'tilt']);
    expect(asked.hall).toBe(true);
    expect(readAddress('')).toEqual({ skill: undefined, rows: new Set(), hall: false });
  });

  test('all rows are one word, and what was written is read back', () => {
    const href = 'https://example.org/a/?renderer=canvas';
    for (const rows of [new Set(ROW_NAMES), new Set(['tilt', 'views'] as const), new Set<never>()]) {
      const written = writeRows(href, rows);
      expect(readAddress(new URL(written).search).rows).toEqual(new Set(rows));
      expect(written).toContain('renderer=canvas');
    }
    expect(writeRows(href, new Set(ROW_NAMES))).toContain('rows=all');
    expect(writeRows(writeRows(href, new Set(ROW_NAMES)), new Set())).toBe(href);
    expect(withoutSkill('https://example.org/?skill=x&rows=all')).toBe('https://example.org/?rows=all');
  });

  test('the hall is written and taken out, and leaves the rest alone', () => {
    const href = 'https://example.org/?rows=tilt,energy';
    expect(readAddress(new URL(writeHall(href, true)).search)).toMatchObject({
      hall: true,
      rows: new Set(['tilt', 'energy']),
    });
    expect(writeHall(writeHall(href, true), false)).toBe(href);
  });
});

test('all rows open and fold at one press; one opens by itself', () => {
  const rows = createRows(new Set());
  rows.toggle('tilt');
  expect(rows.isOpen('tilt')).toBe(true);
  expect(rows.isAll()).toBe(false);
  rows.toggleAll();
  expect(rows.isAll()).toBe(true);
  rows.toggleAll();
  expect(rows.open().size).toBe(0);
});
