/** The list as SVG text, so that small figures in the page (shape tiles, print) need no drawing library. Colours are
 * custom properties: a tile follows the theme by itself. */
import type { DrawItem, Points, Token } from './scene.ts';

const round = (x: number): string => String(Math.round(x * 100) / 100);

/** The colour of a token, of a ghost or not, as SVG says it. */
export type Paint = (token: Token, ghost: boolean) => string;

const byProperty: Paint = (token, ghost) =>
  ghost ? `color-mix(in srgb, var(--${token}) calc(var(--ghost) * 100%), var(--air))` : `var(--${token})`;

export function svgMarkup(items: readonly DrawItem[], ghost = false, paint = byProperty): string {
  return items.map((item) => markup(item, ghost, paint)).join('');
}

/** A whole picture; give it a size by CSS or by width and height. */
export function svgPicture(items: readonly DrawItem[], width: number, height: number, label?: string): string {
  const name = label === undefined ? 'aria-hidden="true"' : `role="img" aria-label="${escapeText(label)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round(width)} ${round(height)}" width="${round(width)}" height="${round(height)}" ${name}>${svgMarkup(items)}</svg>`;
}

function markup(item: DrawItem, ghost: boolean, colour: Paint): string {
  switch (item.kind) {
    case 'fill': {
      const d = item.contours.map((contour) => `${path(contour)}Z`).join('');
      return `<path d="${d}" style="fill:${colour(item.fill, ghost)}${item.opacity === undefined ? '' : `;fill-opacity:${item.opacity}`}"/>`;
    }
    case 'line': {
      const dash = item.dash ? `;stroke-dasharray:${item.dash.join(' ')}` : '';
      const cap = item.cap === 'round' ? ';stroke-linecap:round' : '';
      return `<path d="${path(item.points)}${item.closed ? 'Z' : ''}" style="fill:none;stroke:${colour(item.stroke, ghost)};stroke-width:${round(item.width)};stroke-linejoin:round${dash}${cap}"/>`;
    }
    case 'segments': {
      let d = '';
      const p = item.points;
      for (let i = 0; i < p.length; i += 4) {
        d += `M${round(p[i])} ${round(p[i + 1])}L${round(p[i + 2])} ${round(p[i + 3])}`;
      }
      return `<path d="${d}" style="fill:none;stroke:${colour(item.stroke, ghost)};stroke-width:${round(item.width)}"/>`;
    }
    case 'circle': {
      const fill = item.fill ? colour(item.fill, ghost) : 'none';
      const stroke = item.stroke ? `;stroke:${colour(item.stroke, ghost)};stroke-width:${round(item.width ?? 1)}` : '';
      return `<circle cx="${round(item.x)}" cy="${round(item.y)}" r="${round(item.r)}" style="fill:${fill}${stroke}"/>`;
    }
    case 'text': {
      const halo = item.halo
        ? `;stroke:${colour(item.halo, false)};stroke-width:3;paint-order:stroke;stroke-linejoin:round`
        : '';
      return `<text x="${round(item.x)}" y="${round(item.y)}" text-anchor="${item.anchor}" style="fill:${colour(item.fill, ghost)};font-size:${item.size}px;font-weight:${item.weight ?? 560}${halo}">${escapeText(item.text)}</text>`;
    }
    case 'group': {
      const inner = svgMarkup(item.items, ghost || item.ghost === true, colour);
      return item.x || item.y
        ? `<g transform="translate(${round(item.x ?? 0)} ${round(item.y ?? 0)})">${inner}</g>`
        : `<g>${inner}</g>`;
    }
  }
}

function path(points: Points): string {
  let d = '';
  for (let i = 0; i < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${round(points[i])} ${round(points[i + 1])}`;
  return d;
}

const escapeText = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
