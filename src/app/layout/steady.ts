/** Scales that hold still while a skill is edited, and fit again when another document or another size comes. */
import { type Accessor, createMemo } from 'solid-js';
import { keepAxis, type TimeAxis } from '../../ui/plot/axis.ts';
import type { StageFit } from '../stage-fit.ts';

function useSteady<T>(
  id: Accessor<number>,
  next: Accessor<T>,
  keep: (before: T | undefined, now: T) => T,
): Accessor<T> {
  const memo = createMemo<{ id: number; value: T } | undefined>((last) => {
    const now = id();
    return { id: now, value: keep(last?.id === now ? last.value : undefined, next()) };
  }, undefined);
  return () => (memo() as { value: T }).value;
}

export const useAxis = (id: Accessor<number>, next: Accessor<TimeAxis>): Accessor<TimeAxis> =>
  useSteady(id, next, keepAxis);

/** Pictures keep their scale while it would change by less than this share. */
const STEADY = 0.07;

export const useFit = (id: Accessor<number>, next: Accessor<StageFit>): Accessor<StageFit> =>
  useSteady(id, next, (before, now) => {
    if (!before || before.room !== now.room || before.direction !== now.direction) return now;
    return Math.abs(now.pxPerM / before.pxPerM - 1) < STEADY ? before : now;
  });
