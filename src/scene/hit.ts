/** What lies under the pointer: the topmost item with a hit id, handles before all else. Pure; px of the canvas. */
import { isInside } from './figure-outline.ts';
import type { DrawItem, Layer, Points, Scene } from './scene.ts';

interface Hit {
  readonly id: string;
  /** px from the item's centre or line; 0 inside an area */
  readonly distance: number;
  readonly data?: Readonly<Record<string, string | number>>;
}

/** Half the least size a pointer can be expected to meet, px. */
const REACH = 6;

/** `slack` is added to every reach (touch). Handles win by nearness, the rest by being on top. */
export function hitTest(scene: Scene, x: number, y: number, slack = 0): Hit | undefined {
  let handle: Hit | undefined;
  let found: Hit | undefined;
  for (let i = scene.layers.length - 1; i >= 0; i--) {
    const layer = scene.layers[i];
    if (!isInClip(layer, x, y)) continue;
    const probe = new Probe(x - (layer.x ?? 0), y - (layer.y ?? 0), slack);
    probe.visit(layer.items);
    if (probe.handle && (!handle || probe.handle.distance < handle.distance)) handle = probe.handle;
    found ??= probe.top;
  }
  return handle ?? found;
}

function isInClip(layer: Layer, x: number, y: number): boolean {
  const c = layer.clip;
  return !c || (x >= c.x && y >= c.y && x <= c.x + c.width && y <= c.y + c.height);
}

class Probe {
  handle: Hit | undefined;
  top: Hit | undefined;
  readonly #x: number;
  readonly #y: number;
  readonly #slack: number;

  constructor(x: number, y: number, slack: number) {
    this.#x = x;
    this.#y = y;
    this.#slack = slack;
  }

  visit(items: readonly DrawItem[]): void {
    for (let i = items.length - 1; i >= 0; i--) this.#test(items[i]);
  }

  #test(item: DrawItem): void {
    if (item.kind === 'group') {
      const inner = new Probe(this.#x - (item.x ?? 0), this.#y - (item.y ?? 0), this.#slack);
      inner.visit(item.items);
      if (inner.handle && (!this.handle || inner.handle.distance < this.handle.distance)) this.handle = inner.handle;
      if (inner.top) this.top ??= inner.top;
      else if (item.hit && inner.#touchesAny(item.items)) this.#take(item, 0);
      return;
    }
    if (!item.hit) return;
    const distance = this.#distance(item);
    if (distance !== undefined) this.#take(item, distance);
  }

  #take(item: DrawItem, distance: number): void {
    if (!item.hit) return;
    const hit: Hit = { id: item.hit, distance, ...(item.data ? { data: item.data } : {}) };
    if (item.hit.startsWith('handle:')) {
      if (!this.handle || distance < this.handle.distance) this.handle = hit;
    } else this.top ??= hit;
  }

  #touchesAny(items: readonly DrawItem[]): boolean {
    return items.some((item) => item.kind === 'fill' && this.#distance(item) !== undefined);
  }

  /** undefined: not hit */
  #distance(item: DrawItem): number | undefined {
    const reach = (item.reach ?? REACH) + this.#slack;
    switch (item.kind) {
      case 'fill':
        return item.contours.some((contour) => isInside(contour, this.#x, this.#y)) ? 0 : undefined;
      case 'circle': {
        const d = Math.hypot(this.#x - item.x, this.#y - item.y);
        return d <= Math.max(item.r, reach) ? d : undefined;
      }
      case 'line':
      case 'segments': {
        const d = this.#toLine(item.points, item.kind === 'segments', item.kind === 'line' && item.closed === true);
        return d <= Math.max(item.width / 2, reach) ? d : undefined;
      }
      default:
        return undefined;
    }
  }

  #toLine(p: Points, apart: boolean, closed: boolean): number {
    const n = p.length / 2;
    let best = Number.POSITIVE_INFINITY;
    const step = apart ? 2 : 1;
    for (let i = 0; i + 1 < n + (closed ? 1 : 0); i += step) {
      const j = (i + 1) % n;
      const dx = p[2 * j] - p[2 * i];
      const dy = p[2 * j + 1] - p[2 * i + 1];
      const ex = this.#x - p[2 * i];
      const ey = this.#y - p[2 * i + 1];
      const s = Math.min(1, Math.max(0, (ex * dx + ey * dy) / (dx * dx + dy * dy || 1)));
      best = Math.min(best, Math.hypot(ex - s * dx, ey - s * dy));
    }
    return best;
  }
}
