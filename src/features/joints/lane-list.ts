/** Which joint lanes stand under the shapes: the user's choice, or those that move most; steady while a hand is at work. */

import { createMemo, createSignal } from 'solid-js';
import { withoutSide } from '../../../sim/math/side.ts';
import { makeKeyWork } from '../../app/key-work.ts';
import type { Page } from '../../app/page.ts';
import { chooseLanes, type Lane } from '../../document/lanes.ts';

export function useLanes(page: Page, count: number) {
  const { flight } = page;
  const keys = page.keepState(makeKeyWork);
  const [chosen, setChosen] = createSignal<readonly string[]>();
  const [open, setOpen] = createSignal<string>();
  const [key, setKey] = createSignal<number>();
  const stem = (id: string): string => withoutSide(id);
  // a lane of both sides splits when one side is changed, and two sides join when they become equal
  const follow = (ids: readonly string[], lanes: readonly Lane[]): Lane[] => {
    const found = new Set<Lane>();
    for (const id of ids) {
      const exact = lanes.find((lane) => lane.id === id);
      for (const lane of exact ? [exact] : lanes.filter((l) => stem(l.id) === stem(id))) found.add(lane);
    }
    return lanes.filter((lane) => found.has(lane)).slice(0, Math.max(count, ids.length));
  };
  let id: number | undefined;
  let ids: readonly string[] = [];
  const shown = createMemo<Lane[]>(() => {
    const lanes = flight.lanes();
    const wanted = chosen();
    if (wanted) return follow(wanted, lanes);
    if (flight.id() !== id) {
      id = flight.id();
      ids = chooseLanes(lanes, count).map((lane) => lane.id);
    }
    return follow(ids, lanes);
  });
  return {
    shown,
    open: () => shown().find((lane) => lane.id === open())?.id,
    setOpen: (id: string | undefined) => {
      setKey(undefined);
      setOpen(id);
      keys.setLane(id);
    },
    key,
    setKey,
    toggle: (id: string) => {
      const now = shown().map((lane) => lane.id);
      setChosen(now.includes(id) ? now.filter((one) => one !== id) : [...now, id]);
    },
  };
}
export type LaneList = ReturnType<typeof useLanes>;
