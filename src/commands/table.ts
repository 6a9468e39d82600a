/** Everything the bench can do, in one table. Keys, menus and the list of keys are projections of it. */

import type { Actions, DeferredCommand, ToolName } from './actions.ts';
import type { Command, CommandGroup } from './command.ts';
import { keyCommands } from './key-commands.ts';
import { toolTexts } from './tool-words.ts';
import { commandTexts, largeTexts, titleTexts } from './words.ts';

export type { Command } from './command.ts';

const t = titleTexts;
const c = commandTexts;

const asked = (id: DeferredCommand, title: string, group: CommandGroup, keys: readonly string[] = []): Command => ({
  id,
  title,
  group,
  keys,
  run: (b) => b.ask(id),
});

const TOOL_KEYS: Record<ToolName, string> = {
  pose: 'P',
  compare: 'C',
  account: 'W',
  contact: 'M',
  ask: 'K',
  estimate: 'E',
  film: 'I',
  class: 'Q',
  hand: 'H',
};
const toolCommands = (Object.keys(TOOL_KEYS) as ToolName[]).map(
  (name): Command => ({
    id: `tool-${name}`,
    title: toolTexts.commands[name],
    group: 'tool',
    keys: [TOOL_KEYS[name]],
    when: (b) => b.hasTool(name),
    run: (b) => b.openTool(name),
  }),
);

const l = largeTexts;
const isLarge = (b: Actions): boolean => b.isLarge();
/** px that an arrow key moves the large stage by */
const PAN = 48;
const stageCommands: readonly Command[] = [
  { id: 'large', title: l.large, group: 'view', keys: ['G'], run: (b) => b.toggleLarge() },
  { id: 'zoom-in', title: l.zoomIn, group: 'view', keys: ['+', '='], when: isLarge, run: (b) => b.zoomLarge(1.25) },
  { id: 'zoom-out', title: l.zoomOut, group: 'view', keys: ['-'], when: isLarge, run: (b) => b.zoomLarge(0.8) },
  { id: 'fit', title: l.fit, group: 'view', keys: ['0'], when: isLarge, run: (b) => b.fitLarge() },
  { id: 'follow', title: l.follow, group: 'view', keys: ['F'], when: isLarge, run: (b) => b.followLarge() },
  ...(
    [
      ['left', 'ArrowLeft', PAN, 0],
      ['right', 'ArrowRight', -PAN, 0],
      ['up', 'ArrowUp', 0, PAN],
      ['down', 'ArrowDown', 0, -PAN],
    ] as const
  ).map(
    ([way, key, dx, dy]): Command => ({
      id: `pan-${way}`,
      title: l.pan[way],
      group: 'view',
      keys: [`Alt+${key}`],
      when: isLarge,
      run: (b) => b.panLarge(dx, dy),
    }),
  ),
];

const named = (title: string, what: string | undefined): string => (what === undefined ? title : c.titled(title, what));

export const commands: readonly Command[] = [
  { id: 'play', title: t.play, group: 'time', keys: ['Space'], run: (b) => b.togglePlay() },
  { id: 'loop', title: t.loop, group: 'time', keys: ['L'], run: (b) => b.toggleLoop() },
  {
    id: 'back',
    title: t.back,
    group: 'time',
    keys: ['ArrowLeft'],
    run: (b) => (b.isHall() ? b.goToShape(-1) : b.moveCursor(-0.01)),
  },
  {
    id: 'on',
    title: t.on,
    group: 'time',
    keys: ['ArrowRight'],
    run: (b) => (b.isHall() ? b.goToShape(1) : b.moveCursor(0.01)),
  },
  { id: 'back-tenth', title: t.backTenth, group: 'time', keys: ['Shift+ArrowLeft'], run: (b) => b.moveCursor(-0.1) },
  { id: 'on-tenth', title: t.onTenth, group: 'time', keys: ['Shift+ArrowRight'], run: (b) => b.moveCursor(0.1) },
  { id: 'shape-before', title: t.shapeBefore, group: 'time', keys: ['PageUp'], run: (b) => b.goToShape(-1) },
  { id: 'shape-after', title: t.shapeAfter, group: 'time', keys: ['PageDown'], run: (b) => b.goToShape(1) },
  { id: 'takeoff', title: t.takeoff, group: 'time', keys: ['Home'], run: (b) => b.goTo('takeoff') },
  { id: 'apex', title: t.apex, group: 'time', keys: ['A'], run: (b) => b.goTo('apex') },
  { id: 'touchdown', title: t.touchdown, group: 'time', keys: ['End'], run: (b) => b.goTo('touchdown') },
  {
    id: 'mark',
    title: t.mark,
    group: 'time',
    keys: ['T'],
    titleNow: (b) => (b.isMarked() ? t.unmark : t.mark),
    run: (b) => b.toggleMark(),
  },
  { id: 'quarter', title: t.quarter, words: c.slowWords, group: 'time', keys: ['1'], run: (b) => b.setSpeed(0.25) },
  { id: 'half', title: t.half, group: 'time', keys: ['2'], run: (b) => b.setSpeed(0.5) },
  { id: 'real', title: t.real, group: 'time', keys: ['3'], run: (b) => b.setSpeed(1) },
  {
    id: 'undo',
    title: t.undo,
    group: 'edit',
    keys: ['Mod+Z'],
    titleNow: (b) => named(t.undo, b.undoTitle()),
    when: (b) => b.undoTitle() !== undefined,
    why: c.why.undo,
    run: (b) => b.undo(),
  },
  {
    id: 'redo',
    title: t.redo,
    group: 'edit',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    titleNow: (b) => named(t.redo, b.redoTitle()),
    when: (b) => b.redoTitle() !== undefined,
    why: c.why.redo,
    run: (b) => b.redo(),
  },
  { id: 'values', title: t.values, group: 'edit', keys: ['V'], run: (b) => b.openPanel('values') },
  { id: 'athlete', title: t.athlete, group: 'edit', keys: [], run: (b) => b.openPanel('athlete') },
  { id: 'joints', title: t.joints, group: 'edit', keys: ['J'], run: (b) => b.openPanel('joints') },
  { id: 'shapes', title: t.shapes, group: 'edit', keys: ['B'], run: (b) => b.openPanel('shapes') },
  ...keyCommands,
  ...toolCommands,
  { id: 'skills', title: t.skills, group: 'file', keys: ['S'], run: (b) => b.openPanel('skills') },
  { id: 'open', title: t.open, group: 'file', keys: ['Mod+O'], run: (b) => b.openFile() },
  { id: 'save', title: t.save, group: 'file', keys: ['Mod+S'], run: (b) => b.saveFile() },
  {
    id: 'save-original',
    title: t.saveOriginal,
    group: 'file',
    keys: [],
    when: (b) => b.hasOriginal(),
    why: c.why.original,
    run: (b) => b.saveOriginal(),
  },
  { id: 'save-version-1', title: t.saveVersion1, group: 'file', keys: [], run: (b) => b.saveVersion1() },
  ...stageCommands,
  asked('save-shelf', c.saveShelf, 'file', ['Mod+Shift+S']),
  asked('save-copy', c.saveCopy, 'file'),
  asked('code', c.code, 'file', ['D']),
  { ...asked('try', c.try, 'tool'), words: c.tryWords },
  { id: 'about', title: c.about, words: c.aboutWords, group: 'view', keys: [], run: (b) => b.openPanel('about') },
  { id: 'print', title: c.print, group: 'file', keys: ['Mod+P'], run: (b) => b.openPanel('print') },
  asked('csv', c.csv, 'file'),
  asked('svg', c.svg, 'file'),
  asked('png', c.png, 'file'),
  { ...asked('one-file', c.oneFile, 'file'), words: c.oneFileWords },
  { id: 'commands', title: c.commands, group: 'view', keys: ['Mod+K'], run: (b) => b.openPanel('commands') },
  { id: 'rows', title: c.rows, words: c.rowWords, group: 'view', keys: ['R'], run: (b) => b.toggleRows() },
  { id: 'hall', title: c.hall, words: c.hallWords, group: 'view', keys: [], run: (b) => b.setHall(!b.isHall()) },
  asked('say', c.say, 'view', ['O']),
  asked('metric', c.metric, 'view'),
  asked('imperial', c.imperial, 'view'),
  asked('revolutions', c.revolutions, 'view'),
  asked('degrees', c.degrees, 'view'),
  asked('licences', c.licences, 'view'),
  { id: 'light', title: t.light, group: 'view', keys: [], run: (b) => b.setTheme('light') },
  { id: 'dark', title: t.dark, group: 'view', keys: [], run: (b) => b.setTheme('dark') },
  { id: 'system', title: t.system, group: 'view', keys: [], run: (b) => b.setTheme('system') },
  { id: 'start', title: c.start, words: c.startWords, group: 'learn', keys: [], run: (b) => b.openPanel('start') },
  {
    id: 'lessons',
    title: c.lessons,
    words: c.lessonWords,
    group: 'learn',
    keys: [],
    run: (b) => b.read({ page: 'lessons' }),
  },
  {
    id: 'glossary',
    title: c.glossary,
    words: c.glossaryWords,
    group: 'learn',
    keys: [],
    run: (b) => b.read({ page: 'glossary' }),
  },
  { id: 'help', title: t.help, words: c.helpWords, group: 'view', keys: ['?'], run: (b) => b.openPanel('help') },
];

export const findCommand = (id: string): Command => {
  const found = commands.find((c) => c.id === id);
  if (!found) throw new RangeError(`no command "${id}"`);
  return found;
};
