/** Where the letters at the ends of curves are written: near their ends, and never on each other. px. */

interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Room {
  readonly top: number;
  readonly bottom: number;
  /** of the last letter's left edge */
  readonly right: number;
}

/** Ends so near to each other share a column of letters. */
const NEAR = 12;
/** Of one letter and the air beside it. */
const WIDTH = 12;

/** In the order given; `least` is the height of a letter. */
export function placeLetters(ends: readonly Spot[], least: number, room: Room): Spot[] {
  const out: Spot[] = ends.map(({ x, y }) => ({ x, y }));
  const order = ends.map((_, i) => i).sort((a, b) => ends[a].x - ends[b].x);
  const groups: number[][] = [];
  for (const i of order) {
    const group = groups.at(-1);
    if (group && ends[i].x - ends[group[0]].x < NEAR) group.push(i);
    else groups.push([i]);
  }
  const capacity = Math.max(1, Math.floor((room.bottom - room.top) / least) + 1);
  for (const group of groups) {
    const down = [...group].sort((a, b) => ends[a].y - ends[b].y);
    const columns = Math.ceil(down.length / capacity);
    const left = Math.min(ends[group[0]].x, room.right - (columns - 1) * WIDTH);
    for (let column = 0; column < columns; column++) {
      const mine = down.filter((_, k) => k % columns === column);
      const ys = spread(
        mine.map((i) => ends[i].y),
        least,
        room,
      );
      mine.forEach((i, k) => {
        out[i] = { x: columns === 1 ? Math.min(ends[i].x, room.right) : left + column * WIDTH, y: ys[k] };
      });
    }
  }
  return out;
}

/** From the top down, each at least a letter under the one before, and all inside the room. */
function spread(ys: readonly number[], least: number, { top, bottom }: Room): number[] {
  const out = [...ys];
  for (let i = 0; i < out.length; i++) out[i] = Math.max(out[i], i === 0 ? top : out[i - 1] + least);
  for (let i = out.length - 1; i >= 0; i--)
    out[i] = Math.min(out[i], i === out.length - 1 ? bottom : out[i + 1] - least);
  return out;
}
