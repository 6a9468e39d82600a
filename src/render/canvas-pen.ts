/** Items of a scene on a 2D context. Colours are set only where they change, since the browser reads them as text each time. */
import type { DrawItem, LineItem, Points, TextItem } from '../scene/scene.ts';
import type { Palette } from './palette.ts';
import type { PutText } from './stage-renderer.ts';

const NO_DASH: number[] = [];

export class CanvasPen {
  readonly #g: CanvasRenderingContext2D;
  readonly #palette: Palette;
  readonly #ratio: number;
  readonly #putText: PutText;
  #fill = '';
  #stroke = '';

  constructor(g: CanvasRenderingContext2D, palette: Palette, ratio: number, putText: PutText) {
    this.#g = g;
    this.#palette = palette;
    this.#ratio = ratio;
    this.#putText = putText;
    g.lineJoin = 'round';
  }

  draw(items: readonly DrawItem[], ghost: boolean): void {
    for (const item of items) this.#item(item, ghost);
  }

  #item(item: DrawItem, ghost: boolean): void {
    const g = this.#g;
    switch (item.kind) {
      case 'fill': {
        g.beginPath();
        for (const contour of item.contours) trace(g, contour, true);
        this.#fillWith(this.#palette.css(item.fill, ghost));
        const opacity = item.opacity ?? 1;
        if (opacity !== 1) g.globalAlpha = opacity;
        g.fill();
        if (opacity !== 1) g.globalAlpha = 1;
        return;
      }
      case 'line':
        this.#line(item, ghost);
        return;
      case 'segments': {
        const p = item.points;
        g.beginPath();
        for (let i = 0; i + 3 < p.length; i += 4) {
          g.moveTo(p[i], p[i + 1]);
          g.lineTo(p[i + 2], p[i + 3]);
        }
        this.#strokeWith(this.#palette.css(item.stroke, ghost), item.width, 'butt');
        g.stroke();
        return;
      }
      case 'circle':
        g.beginPath();
        g.arc(item.x, item.y, item.r, 0, 2 * Math.PI);
        if (item.fill) {
          this.#fillWith(this.#palette.css(item.fill, ghost));
          g.fill();
        }
        if (item.stroke) {
          this.#strokeWith(this.#palette.css(item.stroke, ghost), item.width ?? 1, 'butt');
          g.stroke();
        }
        return;
      case 'text':
        this.#text(item, ghost);
        return;
      case 'group': {
        const x = item.x ?? 0;
        const y = item.y ?? 0;
        // moved there and back: saving the whole state would forget what is set
        g.translate(x, y);
        this.draw(item.items, ghost || item.ghost === true);
        g.translate(-x, -y);
      }
    }
  }

  #line(item: LineItem, ghost: boolean): void {
    const g = this.#g;
    g.beginPath();
    trace(g, item.points, item.closed === true);
    this.#strokeWith(this.#palette.css(item.stroke, ghost), item.width, item.cap ?? 'butt');
    if (item.dash) g.setLineDash(item.dash as number[]);
    g.stroke();
    if (item.dash) g.setLineDash(NO_DASH);
  }

  #text(item: TextItem, ghost: boolean): void {
    this.#putText(this.#g, item, {
      font: `${item.weight ?? 560} ${item.size}px ${this.#palette.font}`,
      colour: this.#palette.css(item.fill, ghost),
      halo: item.halo && this.#palette.css(item.halo, false),
      ratio: this.#ratio,
    });
  }

  #fillWith(colour: string): void {
    if (colour !== this.#fill) this.#g.fillStyle = this.#fill = colour;
  }

  #strokeWith(colour: string, width: number, cap: CanvasLineCap): void {
    const g = this.#g;
    if (colour !== this.#stroke) g.strokeStyle = this.#stroke = colour;
    g.lineWidth = width;
    g.lineCap = cap;
  }
}

function trace(g: CanvasRenderingContext2D, p: Points, closed: boolean): void {
  if (p.length < 4) return;
  g.moveTo(p[0], p[1]);
  for (let i = 2; i + 1 < p.length; i += 2) g.lineTo(p[i], p[i + 1]);
  if (closed) g.closePath();
}
