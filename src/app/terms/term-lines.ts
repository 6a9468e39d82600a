/** The four lines of a special word, read from the one glossary (docs/glossary.md): they are written there and nowhere else. */
import glossary from '../../../docs/glossary.md?raw';
import type { TermName } from './term-name.ts';

/** Headings of the glossary. */
const TITLES: Readonly<Record<TermName, string>> = {
  tilt: 'Tilt',
  longAxis: 'Long axis',
  momentOfInertia: 'Moment of inertia',
  angularMomentum: 'Angular momentum',
  wobble: 'Wobble',
};

interface TermText {
  readonly title: string;
  readonly lines: readonly string[];
}

export function readTerm(name: TermName, text = glossary): TermText {
  const title = TITLES[name];
  const [, part = ''] = text.split(`\n### ${title}\n`);
  const [own] = part.split(/\n##/);
  return { title, lines: [...own.matchAll(/^\d\. (.+)$/gm)].map(([, line]) => line) };
}
