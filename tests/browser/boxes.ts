/**
 * Where every text, control and drawn label of the page is, and which of them are in each other's way. Texts on a canvas are
 * known by watching what is drawn: `watchCanvases` before the page opens, with its own 2D renderer (`?renderer=canvas`).
 */
import type { Page } from '@playwright/test';

interface Ruled {
  /** px that a finger needs; 0: a mouse */
  readonly finger: number;
  /** least size of a text, and of one on a canvas */
  readonly text: number;
  readonly tick: number;
}
export const MOUSE: Ruled = { finger: 0, text: 12, tick: 10 };
export const FINGER: Ruled = { finger: 44, text: 12, tick: 10 };

/** Notes each text that any canvas draws, and takes it over when one canvas is drawn into another. */
export async function watchCanvases(page: Page): Promise<void> {
  await page.addInitScript(() => {
    interface Drawn {
      text: string;
      size: number;
      x0: number;
      y0: number;
      x1: number;
      y1: number;
    }
    type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;
    const drawn = new WeakMap<object, Drawn[]>();
    const of = (canvas: object): Drawn[] => drawn.get(canvas) ?? [];
    const placed = (g: Context, x0: number, y0: number, x1: number, y1: number) => {
      const m = g.getTransform();
      const corners = [
        [x0, y0],
        [x1, y0],
        [x0, y1],
        [x1, y1],
      ].map(([x, y]) => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]);
      const [xs, ys] = [corners.map((c) => c[0]), corners.map((c) => c[1])];
      return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
    };
    const put = (canvas: object, one: Drawn): void => {
      const same = (d: Drawn): boolean =>
        d.text === one.text && Math.abs(d.x0 - one.x0) < 1 && Math.abs(d.y0 - one.y0) < 1;
      drawn.set(canvas, [...of(canvas).filter((d) => !same(d)), one]);
    };
    for (const proto of [CanvasRenderingContext2D.prototype, OffscreenCanvasRenderingContext2D.prototype]) {
      const { fillText, drawImage, clearRect, fillRect } = proto;
      proto.fillText = function (this: Context, text: string, x: number, y: number, most?: number) {
        const m = this.measureText(text);
        const size = Number.parseFloat(/([\d.]+)px/.exec(this.font)?.[1] ?? '0') * Math.abs(this.getTransform().a || 1);
        const box = placed(
          this,
          x - m.actualBoundingBoxLeft,
          y - m.actualBoundingBoxAscent,
          x + m.actualBoundingBoxRight,
          y + m.actualBoundingBoxDescent,
        );
        if (text.trim() && this.globalAlpha > 0.1) put(this.canvas, { text, size, ...box });
        return most === undefined ? fillText.call(this, text, x, y) : fillText.call(this, text, x, y, most);
      } as typeof fillText;
      proto.drawImage = function (this: Context, ...given: unknown[]) {
        const source = given[0] as { width: number; height: number };
        const n = given.slice(1) as number[];
        const [sx, sy, sw, sh] = n.length === 8 ? n : [0, 0, source.width, source.height];
        const [dx, dy] = n.length === 8 ? n.slice(4) : n;
        const [dw, dh] = n.length === 8 ? n.slice(6) : n.length === 4 ? n.slice(2) : [sw, sh];
        if (this.globalAlpha > 0.1)
          for (const d of of(source)) {
            if (d.x1 < sx || d.x0 > sx + sw || d.y1 < sy || d.y0 > sy + sh) continue;
            const [kx, ky] = [dw / sw, dh / sh];
            const box = placed(
              this,
              dx + (d.x0 - sx) * kx,
              dy + (d.y0 - sy) * ky,
              dx + (d.x1 - sx) * kx,
              dy + (d.y1 - sy) * ky,
            );
            put(this.canvas, { text: d.text, size: d.size * ky * Math.abs(this.getTransform().d || 1), ...box });
          }
        return (drawImage as (...all: unknown[]) => void).apply(this, given);
      } as typeof drawImage;
      const cover = (g: Context, x: number, y: number, w: number, h: number): void => {
        const c = placed(g, x, y, x + w, y + h);
        const left = of(g.canvas).filter(
          (d) => d.x0 < c.x0 - 1 || d.x1 > c.x1 + 1 || d.y0 < c.y0 - 1 || d.y1 > c.y1 + 1,
        );
        drawn.set(g.canvas, left);
      };
      proto.clearRect = function (this: Context, x: number, y: number, w: number, h: number) {
        cover(this, x, y, w, h);
        return clearRect.call(this, x, y, w, h);
      } as typeof clearRect;
      proto.fillRect = function (this: Context, x: number, y: number, w: number, h: number) {
        if (this.globalAlpha > 0.9) cover(this, x, y, w, h);
        return fillRect.call(this, x, y, w, h);
      } as typeof fillRect;
    }
    for (const proto of [HTMLCanvasElement.prototype, OffscreenCanvas.prototype])
      for (const side of ['width', 'height']) {
        const own = Object.getOwnPropertyDescriptor(proto, side);
        Object.defineProperty(proto, side, {
          ...own,
          // another size empties it
          set(this: object, value: number) {
            drawn.delete(this);
            own?.set?.call(this, value);
          },
        });
      }
    Object.assign(window, { drawnTexts: of });
  });
}

/** What is wrong with the places of what is seen now, a line each; empty: nothing. */
export const findMeetings = (page: Page, rule: Ruled): Promise<string[]> =>
  page.evaluate((asked: Ruled) => {
    interface Box {
      readonly x0: number;
      readonly y0: number;
      readonly x1: number;
      readonly y1: number;
    }
    interface Text extends Box {
      readonly text: string;
      readonly size: number;
      readonly of: Element;
      readonly isDrawn: boolean;
    }
    const CONTROLS =
      'button, input, select, textarea, a[href], summary, [role="slider"], [role="button"], [role="tab"]';
    // what lets a press through is asked for too, while this looks
    const through = document.createElement('style');
    through.textContent = '*, *::before, *::after { pointer-events: auto !important; }';
    document.head.append(through);
    const found: string[] = [];
    const at = (b: Box): string => `(${[b.x0, b.y0, b.x1, b.y1].map((v) => Math.round(v)).join(' ')})`;
    const boxOf = (r: DOMRect): Box => ({ x0: r.left, y0: r.top, x1: r.right, y1: r.bottom });
    const meet = (a: Box, b: Box, by: number): boolean =>
      Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > by && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > by;
    const isOpaque = (e: Element): boolean => {
      const c = /rgba?\(([^)]*)\)/.exec(getComputedStyle(e).backgroundColor)?.[1].split(/[\s,/]+/) ?? [];
      return (c.length < 4 ? 1 : Number(c[3])) > 0.5 && getComputedStyle(e).backgroundColor !== 'transparent';
    };
    /** Nothing opaque is over the middle of it. */
    const isSeen = (e: Element, b: Box): boolean => {
      const [x, y] = [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
      if (x < 0 || y < 0 || x >= innerWidth || y >= innerHeight) return true;
      for (const over of document.elementsFromPoint(x, y)) {
        if (over === e || e.contains(over) || over.contains(e)) return true;
        if (isOpaque(over)) return false;
      }
      return true;
    };
    const isShown = (e: Element): boolean =>
      e.checkVisibility({ opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true }) &&
      !e.closest('.spoken, [inert]') &&
      !/^inset|^rect/.test(getComputedStyle(e).clipPath) &&
      (e.getBoundingClientRect().width > 1 || e.getBoundingClientRect().height > 1);
    /** What clips or scrolls it: the part of the screen that it can be seen in. */
    const frames = (e: Element): { box: Box; scrolls: boolean }[] => {
      const list: { box: Box; scrolls: boolean }[] = [];
      for (let p: Element | null = e; p && p !== document.body; p = p.parentElement) {
        const s = getComputedStyle(p);
        const flow = `${s.overflowX} ${s.overflowY}`;
        if (/hidden|clip/.test(flow))
          list.push({ box: boxOf(p.getBoundingClientRect()), scrolls: /auto|scroll/.test(flow) });
        else if (/auto|scroll/.test(flow)) list.push({ box: boxOf(p.getBoundingClientRect()), scrolls: true });
        if (s.position === 'fixed') break;
      }
      return list;
    };

    const texts: Text[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const e = node.parentElement;
      const words = node.textContent?.replace(/\s+/g, ' ').trim() ?? '';
      // text of a folded part lies in no element of its own
      if (e?.matches('details:not([open])')) continue;
      if (!e || !words || e.closest('script, style, option, noscript, title') || !isShown(e)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const size = Number.parseFloat(getComputedStyle(e).fontSize);
      const hidden = frames(e);
      for (const r of range.getClientRects()) {
        if (r.width < 2 || r.height < 2) continue;
        // letters, not the room of the line
        const mid = (r.top + r.bottom) / 2;
        const b = { x0: r.left, x1: r.right, y0: mid - size * 0.36, y1: mid + size * 0.36 };
        const out = hidden.find(
          ({ box }) => b.x1 < box.x0 + 1 || b.x0 > box.x1 - 1 || b.y1 < box.y0 + 1 || b.y0 > box.y1 - 1,
        );
        if (out) {
          if (!out.scrolls && b.x1 > out.box.x0 && b.x0 < out.box.x1) found.push(`cut away: "${words}" ${at(b)}`);
          continue;
        }
        const seen = hidden.reduce(
          (left, { box }) => ({
            x0: Math.max(left.x0, box.x0),
            y0: Math.max(left.y0, box.y0),
            x1: Math.min(left.x1, box.x1),
            y1: Math.min(left.y1, box.y1),
          }),
          b as Box,
        );
        // what is beyond a scroller cuts the scroller, not the text in it
        let inner: Box = b;
        const half = hidden.find(({ box, scrolls }) => {
          const beyond =
            inner.x0 < box.x0 - 1.5 || inner.x1 > box.x1 + 1.5 || inner.y0 < box.y0 - 2 || inner.y1 > box.y1 + 2;
          if (scrolls) inner = box;
          return beyond && !scrolls;
        });
        if (!isSeen(e, seen)) continue;
        if (half) found.push(`cut: "${words}" ${at(b)}`);
        texts.push({ ...seen, text: words, size, of: e, isDrawn: false });
      }
      const dots = e.closest<HTMLElement>('*');
      if (dots && getComputedStyle(dots).textOverflow === 'ellipsis' && dots.scrollWidth > dots.clientWidth + 1)
        found.push(`cut by dots: "${words}"`);
    }
    const drawnTexts = (window as unknown as { drawnTexts?: (c: object) => (Box & { text: string; size: number })[] })
      .drawnTexts;
    for (const canvas of document.querySelectorAll('canvas')) {
      if (!isShown(canvas) || !drawnTexts) continue;
      const r = canvas.getBoundingClientRect();
      const k = r.width / canvas.width;
      for (const d of drawnTexts(canvas)) {
        const b = { x0: r.left + d.x0 * k, x1: r.left + d.x1 * k, y0: r.top + d.y0 * k, y1: r.top + d.y1 * k };
        const inside = {
          x0: Math.max(b.x0, r.left),
          y0: Math.max(b.y0, r.top),
          x1: Math.min(b.x1, r.right),
          y1: Math.min(b.y1, r.bottom),
        };
        if (!isSeen(canvas, inside)) continue;
        if (frames(canvas).some(({ box }) => b.x1 < box.x0 || b.x0 > box.x1 || b.y1 < box.y0 || b.y0 > box.y1))
          continue;
        if (b.x0 < r.left - 1 || b.x1 > r.right + 1 || b.y0 < r.top - 1 || b.y1 > r.bottom + 1)
          found.push(`cut by its picture: "${d.text}" ${at(b)}`);
        texts.push({ ...b, text: d.text, size: d.size * k, of: canvas, isDrawn: true });
      }
    }

    const scrolls = document.scrollingElement;
    if (scrolls && scrolls.scrollWidth > innerWidth + 1)
      found.push(`the page is ${scrolls.scrollWidth} wide on ${innerWidth}`);
    const mayScroll = (e: Element): boolean =>
      frames(e).some((f) => f.scrolls) || (scrolls !== null && scrolls.scrollHeight > innerHeight + 1);
    for (const t of texts) {
      // plot ticks, and exponents of a formula
      const least = t.isDrawn || t.of.closest('svg, msup > :last-child, sup') ? asked.tick : asked.text;
      if (t.size < least - 0.05) found.push(`${t.size.toFixed(1)} px: "${t.text}" ${at(t)}`);
      if (t.x0 < -1 || t.x1 > innerWidth + 1 || ((t.y0 < -1 || t.y1 > innerHeight + 1) && !mayScroll(t.of)))
        found.push(`off the screen: "${t.text}" ${at(t)}`);
    }
    for (let i = 0; i < texts.length; i++)
      for (let j = i + 1; j < texts.length; j++) {
        const [a, b] = [texts[i], texts[j]];
        const isOne = !a.isDrawn && a.of === b.of && a.text === b.text;
        if (!isOne && meet(a, b, 1.5)) found.push(`texts meet: "${a.text}" ${at(a)} and "${b.text}" ${at(b)}`);
      }

    const nameOf = (e: Element): string =>
      e.getAttribute('aria-label') ?? e.textContent?.trim().slice(0, 40) ?? e.tagName;
    const controls = [...document.querySelectorAll(CONTROLS)].filter((e) => {
      const r = e.getBoundingClientRect();
      return isShown(e) && r.width > 0 && r.height > 0 && !(e as HTMLInputElement).disabled;
    });
    for (const c of controls) {
      const whole = boxOf(c.getBoundingClientRect());
      const b = frames(c).reduce(
        (left, { box }) => ({
          x0: Math.max(left.x0, box.x0),
          y0: Math.max(left.y0, box.y0),
          x1: Math.min(left.x1, box.x1),
          y1: Math.min(left.y1, box.y1),
        }),
        whole,
      );
      if (frames(c).some(({ box }) => b.x1 < box.x0 + 1 || b.x0 > box.x1 - 1 || b.y1 < box.y0 + 1 || b.y0 > box.y1 - 1))
        continue;
      if (!isSeen(c, b)) continue;
      // a handle is pressed where it is drawn, over what it is a handle of; its own room is looked after by its feature
      const isHandle = c.matches('[role="slider"]');
      // a span is as wide as its time; a clause of a sentence is as high as its line, and what it leads to has a place of its own
      const [wide, high] = [
        c.closest('.shape-place') ? 0 : asked.finger,
        c.closest('.sentence') ? Math.min(24, asked.finger) : asked.finger,
      ];
      const label = c.closest('label');
      const finger = label && c.matches('input') ? boxOf(label.getBoundingClientRect()) : whole;
      if (asked.finger && !isHandle) {
        const [w, h] = [finger.x1 - finger.x0, finger.y1 - finger.y0];
        const reach = getComputedStyle(c, '::after');
        const more =
          reach.content !== 'none' && reach.position === 'absolute'
            ? [Number.parseFloat(reach.width), Number.parseFloat(reach.height)]
            : [0, 0];
        if (Math.max(w, more[0]) < wide - 0.5 || Math.max(h, more[1]) < high - 0.5)
          found.push(`${Math.round(w)} x ${Math.round(h)} for a finger: "${nameOf(c)}" ${at(b)}`);
      }
      if (isHandle) continue;
      for (const t of texts)
        if (!c.contains(t.of) && !t.of.contains(c) && !(label?.contains(t.of) ?? false) && meet(b, t, 2))
          found.push(`"${nameOf(c)}" ${at(b)} is on "${t.text}" ${at(t)}`);
    }
    through.remove();
    return [...new Set(found)];
  }, rule);
