/** Scales that hold still while a skill is edited, and fit again when another document or a room of another size comes. */
import { type Accessor, createMemo } from 'solid-js';
import { keepAxis, type TimeAxis } from '../../ui/plot/axis.ts';
import { useDocument } from '../page.ts';
import type { StageFit } from '../stage-fit.ts';
import { keepRoom, type Room } from '../steady-room.ts';

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

export function useFit(id: Accessor<number>, room: Accessor<Room>, make: (room: Room) => StageFit): Accessor<StageFit> {
  const steady = useSteady(id, room, keepRoom);
  const next = createMemo(() => ({ room: steady(), fit: make(steady()) }));
  const kept = useSteady(id, next, (before, now) => {
    if (!before || before.room !== now.room || before.fit.direction !== now.fit.direction) return now;
    return Math.abs(now.fit.pxPerM / before.fit.pxPerM - 1) < STEADY ? before : now;
  });
  return () => kept().fit;
}

/** What is over the pictures keeps the height it had at rest while a hand is at work: a style, undefined at rest. */
export function useRestHeight(height: Accessor<number>): Accessor<string | undefined> {
  const doc = useDocument();
  const rest = createMemo<number>((last) => (doc.isHeld() ? last : height()), 0);
  return () => (doc.isHeld() && rest() > 0 ? `${rest()}px` : undefined);
}
