/** Which rows are under the floor, in their order, and how high each is: the three of the idea, rows that were opened, and a line for each that is not. */
import type { FirstStory } from '../first-rows.ts';
import type { Box } from '../plot/pen.ts';
import { planRows, type RowWish } from '../plot/row-plan.ts';
import type { RowName } from '../rows.ts';

const TILE = 46;
export const NAME = 18;
/** of two ways beside each other, and px between their rows */
export const BESIDE_TILE = 34;
export const BESIDE_GAP = 10;
export const LANE = 24;
const OPEN_LANE = 182;
/** px more that the words beside the shapes take, spaced */
const WORDS_SPACED = 56;
/** of a folded row, px: for a mouse, for a finger */
const FOLDED = 24;
const FOLDED_TOUCH = 44;
/** row of ready skills and lessons at the foot */
export const FOOT = 46;

/** Rows that two ways are seen in, too, where the others are not open. */
const BESIDE: ReadonlySet<UnderRow> = new Set(['tilt', 'energy']);
/** Rows under the three, in their order. */
const UNDER = ['joints', 'tilt', 'moments', 'momentum', 'energy'] as const;
export type UnderRow = (typeof UNDER)[number];

interface GroundWish {
  readonly story: FirstStory;
  readonly open: ReadonlySet<RowName>;
  readonly lanes: readonly string[];
  readonly openLane: string | undefined;
  /** little height: the folded rows are one line until it is pressed */
  readonly isShort: boolean;
  readonly isListed: boolean;
  readonly isCoarse: boolean;
  /** another way of the skill has rows too */
  readonly hasBeside: boolean;
  readonly height: number;
  /** how much more room the reader's own spacing of text takes: 0 as it is written, 1 at lines half as high again */
  readonly spacing?: number;
}

export interface GroundPlan {
  /** by id: shapes, lanes, first0 to first2, the names of open rows, folded:name, folded:more */
  readonly boxes: ReadonlyMap<string, Box>;
  /** everything is open: rates and all they hang together with, in place of the three */
  readonly isBench: boolean;
  readonly open: readonly UnderRow[];
  readonly folded: readonly UnderRow[];
  /** the folded rows are behind one line */
  readonly isOneLine: boolean;
  /** px of a shape's tile */
  readonly tile: number;
  /** a line at the foot: where to start */
  readonly hasFoot: boolean;
  readonly height: number;
}

const OPEN: Readonly<Record<Exclude<UnderRow, 'joints'> | 'rates', Omit<RowWish, 'id' | 'yields'>>> = {
  rates: { least: 66, grow: 5, gap: 10 },
  tilt: { least: 36, grow: 2, gap: 14 },
  moments: { least: 58, grow: 3, gap: 14 },
  momentum: { least: 40, grow: 1.5, gap: 14 },
  energy: { least: 40, grow: 1.5, gap: 13 },
};

/** px more: the number of the other way is under one's own */
const OPEN_TWO = { rates: 14, tilt: 4, moments: 0, momentum: 2, energy: 2 } as const;

export function planGround(wish: GroundWish): GroundPlan {
  const { story, open, isShort } = wish;
  const isBench = open.has('rates');
  const isTwo = wish.hasBeside && !isBench;
  const isFirst = (row: UnderRow): boolean => !isBench && !isTwo && row === 'tilt' && story.kind === 'twisting';
  const under = UNDER.filter((row) => !isFirst(row));
  const opened = under.filter((row) => open.has(row));
  const folded = under.filter((row) => !open.has(row) && (!isTwo || BESIDE.has(row)));
  const isOneLine = isShort && folded.length > 1 && !wish.isListed;
  // keys of joints are on the tiles
  const tile = wish.hasBeside && !open.has('joints') ? BESIDE_TILE : TILE;
  const tiles = wish.hasBeside ? tile + BESIDE_GAP + BESIDE_TILE : tile;
  const wishes: RowWish[] = [{ id: 'shapes', least: tiles + NAME, grow: 0, gap: 4, yields: 0 }];
  const put = (id: string, size: Omit<RowWish, 'id' | 'yields'>): void => void wishes.push({ id, ...size, yields: 0 });
  const spacing = wish.spacing ?? 0;
  /** under the words of the shapes */
  const firstGap = (px: number): number => px + WORDS_SPACED * spacing;
  const sizeOf = (row: keyof typeof OPEN): Omit<RowWish, 'id' | 'yields'> => {
    const { least, ...rest } = OPEN[row];
    return { least: (least + (wish.hasBeside ? OPEN_TWO[row] : 0)) * (1 + spacing), ...rest };
  };
  const putJoints = (): void => {
    for (const [i, id] of wish.lanes.entries())
      put(id, {
        least: id === wish.openLane ? OPEN_LANE : LANE,
        grow: 0,
        gap: i === 0 ? (isBench ? firstGap(7) : 7) : 0,
      });
  };
  if (isBench) {
    if (open.has('joints')) putJoints();
    put('rates', sizeOf('rates'));
  } else {
    const [rate, second, momentum] = leastOf(story, isShort, isTwo);
    put('first0', { least: rate, grow: 4, gap: firstGap(8) });
    put('first1', { least: second, grow: 2, gap: 14 });
    put('first2', { least: momentum, grow: isTwo ? 0.3 : 1, gap: isShort ? 14 : 16 });
    if (open.has('joints')) putJoints();
  }
  for (const row of opened) if (row !== 'joints') put(row, sizeOf(row));
  const tall = wish.isCoarse ? FOLDED_TOUCH : FOLDED;
  const gap = (i: number): number => (i === 0 ? (isShort ? 8 : 13) : 0);
  if (isOneLine) put('folded:more', { least: tall, grow: 0, gap: gap(0) });
  else for (const [i, row] of folded.entries()) put(`folded:${row}`, { least: tall, grow: 0, gap: gap(i) });
  const need = wishes.reduce((sum, row) => sum + row.least + row.gap, 0);
  const hasFoot = !isBench && !isTwo;
  const foot = hasFoot ? FOOT + 6 : 8;
  const height = Math.max(wish.height, need + foot);
  return { boxes: planRows(wishes, height - foot), isBench, open: opened, folded, isOneLine, tile, hasFoot, height };
}

/** px of the three rows at least. */
function leastOf(story: FirstStory, isShort: boolean, isTwo: boolean): readonly [number, number, number] {
  if (isTwo) return isShort ? [62, 44, 28] : [110, 68, 44];
  return isShort ? [60, 40, 28] : [82, 52, story.kind === 'twisting' ? 70 : 50];
}
