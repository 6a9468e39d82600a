/**
 * One layer of the scene as display objects. A layer with an unchanged key is left alone; groups with a key are kept from
 * scene to scene by that key; everything else is drawn again into a Graphics that is used again. Ghosts become one texture.
 */
import { Container, Graphics, type Text } from 'pixi.js';
import type { DrawItem, GroupItem, Layer, Rect, TextItem } from '../scene/scene.ts';
import type { Palette } from './palette.ts';
import { drawPrimitive, makeText, placeText } from './primitives.ts';

export class LayerNode {
  readonly #box = new Container();
  readonly #kept = new Map<string, Container>();
  readonly #texts = new Map<string, Text>();
  #spare: Graphics[] = [];
  #mask: Graphics | undefined;
  #maskKey = '';
  #key: string | undefined;
  #cached = false;

  constructor(parent: Container) {
    parent.addChild(this.#box);
  }

  show(layer: Layer, whole: Rect, palette: Palette, resolution: number): void {
    this.#box.position.set(layer.x ?? 0, layer.y ?? 0);
    this.#clip(layer, whole);
    const key = layer.key === undefined ? undefined : `${layer.name} ${layer.key}`;
    if (key !== undefined && key === this.#key) return;
    this.#key = key;
    if (this.#cached) this.#box.cacheAsTexture(false);
    this.#cached = false;
    this.#rebuild(layer.items, palette, resolution);
    if (layer.name === 'ghosts' && key !== undefined && layer.items.length > 0) {
      this.#box.cacheAsTexture({ resolution, antialias: true });
      this.#cached = true;
    }
  }

  destroy(): void {
    if (this.#cached) this.#box.cacheAsTexture(false);
    this.#box.mask = null;
    this.#mask?.destroy();
    this.#box.destroy({ children: true });
    for (const kept of this.#kept.values()) if (!kept.destroyed) kept.destroy({ children: true });
    for (const text of this.#texts.values()) if (!text.destroyed) text.destroy();
    for (const spare of this.#spare) if (!spare.destroyed) spare.destroy();
  }

  #rebuild(items: readonly DrawItem[], palette: Palette, resolution: number): void {
    const box = this.#box;
    for (const child of box.removeChildren()) {
      if (child === this.#mask) continue;
      if (child instanceof Graphics) {
        child.clear();
        this.#spare.push(child);
      } else if (child.label !== KEEP) child.destroy({ children: true });
    }
    const used = new Set<string>();
    let pen: Graphics | undefined;
    for (const item of items) {
      if (item.kind === 'group') {
        pen = undefined;
        box.addChild(this.#group(item, palette, resolution, used));
      } else if (item.kind === 'text') {
        pen = undefined;
        box.addChild(this.#text(item, palette, resolution, used));
      } else {
        if (!pen) {
          pen = this.#spare.pop() ?? new Graphics();
          box.addChild(pen);
        }
        drawPrimitive(pen, item, palette, false);
      }
    }
    for (const [key, kept] of this.#kept) {
      if (used.has(key)) continue;
      kept.destroy({ children: true });
      this.#kept.delete(key);
    }
    for (const [key, text] of this.#texts) {
      if (used.has(key)) continue;
      text.destroy();
      this.#texts.delete(key);
    }
    while (this.#spare.length > 4) this.#spare.pop()?.destroy();
    if (this.#mask) box.addChild(this.#mask);
  }

  #group(group: GroupItem, palette: Palette, resolution: number, used: Set<string>): Container {
    const key = group.key;
    let made = key === undefined ? undefined : this.#kept.get(key);
    if (!made) {
      made = new Container();
      fillGroup(made, group.items, palette, resolution, group.ghost === true);
      if (key !== undefined) {
        made.label = KEEP;
        this.#kept.set(key, made);
      }
    }
    if (key !== undefined) used.add(key);
    made.position.set(group.x ?? 0, group.y ?? 0);
    return made;
  }

  /** Letters cost most of all to make: the same words are moved instead. */
  #text(item: TextItem, palette: Palette, resolution: number, used: Set<string>): Text {
    const content = `text ${item.text} ${item.size} ${item.weight ?? ''} ${item.fill} ${item.anchor} ${item.halo ?? ''}`;
    let key = content;
    for (let twin = 2; used.has(key); twin++) key = `${content} ${twin}`;
    used.add(key);
    let made = this.#texts.get(key);
    if (!made) {
      made = makeText(item, palette, resolution, false);
      made.label = KEEP;
      this.#texts.set(key, made);
    }
    placeText(made, item);
    return made;
  }

  #clip(layer: Layer, whole: Rect): void {
    const clip = layer.clip;
    const inside =
      !clip ||
      (clip.x <= whole.x &&
        clip.y <= whole.y &&
        clip.x + clip.width >= whole.width &&
        clip.y + clip.height >= whole.height);
    const key = inside ? '' : `${clip.x} ${clip.y} ${clip.width} ${clip.height} ${layer.x ?? 0} ${layer.y ?? 0}`;
    if (key === this.#maskKey) return;
    this.#maskKey = key;
    this.#key = undefined;
    this.#box.mask = null;
    this.#mask?.destroy();
    this.#mask = undefined;
    if (inside) return;
    this.#mask = new Graphics()
      .rect(clip.x - (layer.x ?? 0), clip.y - (layer.y ?? 0), clip.width, clip.height)
      .fill(0xffffff);
    this.#box.addChild(this.#mask);
    this.#box.mask = this.#mask;
  }
}

/** Label of containers that outlive a rebuild. */
const KEEP = 'kept';

function fillGroup(
  box: Container,
  items: readonly DrawItem[],
  palette: Palette,
  resolution: number,
  ghost: boolean,
): void {
  let pen: Graphics | undefined;
  for (const item of items) {
    if (item.kind === 'group') {
      pen = undefined;
      const inner = new Container();
      inner.position.set(item.x ?? 0, item.y ?? 0);
      fillGroup(inner, item.items, palette, resolution, ghost || item.ghost === true);
      box.addChild(inner);
    } else if (item.kind === 'text') {
      pen = undefined;
      box.addChild(makeText(item, palette, resolution, ghost));
    } else {
      if (!pen) {
        pen = new Graphics();
        box.addChild(pen);
      }
      drawPrimitive(pen, item, palette, ghost);
    }
  }
}
