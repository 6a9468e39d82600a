// Every kind of damaged input, by its name.
import { athletesKind } from './athletes.ts';
import { capturesKind } from './captures.ts';
import { clipsKind } from './clips.ts';
import { keptKind } from './kept.ts';
import type { CorpusKind } from './kind.ts';
import { linksKind } from './links.ts';
import { recordingsKind } from './recordings.ts';
import { sheetsKind } from './sheets.ts';
import { skillsKind } from './skills.ts';
import { tablesKind } from './tables.ts';
import { worksheetsKind } from './worksheets.ts';

export const KINDS: readonly CorpusKind[] = [
  skillsKind,
  athletesKind,
  sheetsKind,
  tablesKind,
  recordingsKind,
  capturesKind,
  linksKind,
  worksheetsKind,
  clipsKind,
  keptKind,
];
