/** Words of the moving picture. */
import type { MovingView } from '../../scene/moving-place.ts';

export type Slower = '1' | '2' | '4' | '8' | '16';
export type SizeName = 'wide' | 'small' | 'square' | 'tall';

export const movingTexts = {
  name: 'Moving picture',
  verb: 'Make it',
  short: 'Make',
  /** what it will be */
  hint: (view: string, speed: string, size: string) => `from ${view}, ${speed}, ${size}`,
  count: (seconds: string, pictures: string) => `${seconds}, ${pictures} pictures`,
  making: (made: string, of: string) => `making it: ${made} of ${of} pictures`,
  saved: 'Saved.',
  view: 'From',
  views: { side: 'the side', front: 'the front', top: 'above', close: 'close' } satisfies Record<MovingView, string>,
  speed: 'Speed',
  speeds: { '1': 'real', '2': '½', '4': '¼', '8': '⅛', '16': '1⁄16' } satisfies Record<Slower, string>,
  speedSaid: (speed: string) => (speed === 'real' ? 'real speed' : `${speed} speed`),
  size: 'Size',
  px: (width: number, height: number) => `${width} × ${height}`,
  format: 'File',
  formats: { mp4: 'MP4', webm: 'WebM' },
  span: 'Span',
  shown: 'In it',
  headline: 'the result, in words',
  numbers: 'rates of twist and somersault',
  numbersAll: 'rates, angular momentum and energy',
  always: 'Time, speed and the caution always are.',
  nameToo: (name: string) => `“${name}” too: it is ticked.`,
  preview: 'How it will look at the time under the plumb line',
  again: 'Save again',
  share: 'Share …',
  ready: (name: string, size: string) =>
    `${name}, ${size}: saved where this browser saves. It is here until the page is closed.`,
  twist: 'twist',
  somersault: 'somersault',
  momentum: 'angular momentum',
  energy: 'energy',
  seconds: (s: string) => `${s} s`,
  byName: (title: string, name: string) => `${title} · ${name}`,
  webmInstead: 'This browser cannot write MP4; it writes WebM instead.',
  none: 'This browser cannot write a moving picture here: it is too old, or the page was not opened by https or from the disk.',
  noFormat: 'This browser writes no moving picture of this size. A smaller one may work.',
  noRoom: 'Not made: there is no memory left for it. Shorter, faster or smaller it may be.',
  failed: (reason: string) => `Not made: ${reason}`,
  notSaved: 'Not saved: the browser refused it. It is made, and here: save it again.',
  notShared: 'Not shared. It is made, and here: save it, or share it again.',
} as const;
