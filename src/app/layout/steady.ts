/** Scales that hold still while a skill is edited, and fit anew when another skill or another size comes. */
import { type Accessor, createMemo } from 'solid-js';
import { keepAxis, type TimeAxis } from '../../ui/plot/axis.ts';
import type { StageFit } from '../stage-fit.ts';

function useSteady<T>(
  name: Accessor<string>,
  next: Accessor<T>,
  keep: (before: T | undefined, now: T) => T,
): Accessor<T> {
  const memo = createMemo<{ name: string; value: T } | undefined>((last) => {
    const now = name();
    return { name: now, value: keep(last?.name === now ? last.value : undefined, next()) };
  }, undefined);
  return () => (memo() as { value: T }).value;
}

export const useAxis = (name: Accessor<string>, next: Accessor<TimeAxis>): Accessor<TimeAxis> =>
  useSteady(name, next, keepAxis);

/** Pictures keep their scale while it would change by less than this share. */
const STEADY = 0.07;

export const useFit = (name: Accessor<string>, next: Accessor<StageFit>): Accessor<StageFit> =>
  useSteady(name, next, (before, now) => {
    if (!before || before.room !== now.room || before.direction !== now.direction) return now;
    return Math.abs(now.pxPerM / before.pxPerM - 1) < STEADY ? before : now;
  });
