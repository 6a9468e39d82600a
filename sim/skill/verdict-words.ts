/** What a verdict is called, on the page and on the command line (docs/glossary.md). */
import type { VerdictKind } from '../contact/verdict.ts';

export const VERDICT_WORDS: Readonly<Record<VerdictKind, string>> = {
  stuck: 'stuck',
  stepForward: 'a step forward',
  stepBack: 'a step back',
  fall: 'a fall',
};
