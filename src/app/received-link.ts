/** A skill that came by a link, opened beside one's own: never in its place, and the same one once. */
import type { Handed, SkillFile } from '../../sim/index.ts';
import { nameOf, type SkillEntry } from '../document/shelf.ts';
import { inWords } from '../ui/names.ts';
import { linkTexts as t } from './link-words.ts';
import type { Page } from './page.ts';
import { putVersion } from './put-version.ts';
import { wordFault } from './say/fault-words.ts';
import type { UserShelf } from './shelf.ts';
import { shelfTexts } from './shelf-words.ts';
import { texts } from './words.ts';

interface Received {
  readonly entry: SkillEntry;
  readonly isNew: boolean;
}

export async function openLink(page: Page, shelf: UserShelf, href: string): Promise<void> {
  const { doc, services } = page;
  let handed: Handed;
  try {
    handed = (await services.load.handing()).readSkillLink(href);
    doc.check(handed.file);
  } catch (error) {
    doc.refuse({ name: texts.files.link, reason: `${wordLinkFault(error)}.` });
    return;
  }
  doc.clearFileFault();
  await openBeside(page, shelf, handed);
}

const wordLinkFault = (error: unknown): string =>
  error instanceof Error && error.cause instanceof Error ? t.content(wordFault(error.cause)) : wordFault(error);

async function openBeside(page: Page, shelf: UserShelf, { file, changes }: Handed): Promise<void> {
  const { doc, shell } = page;
  doc.finish();
  const own = doc.chain();
  const hasOwn = !page.isFresh || doc.undoTitle() !== undefined;
  if (isWork(page)) await keepOpen(page, shelf);
  const received = await receive(page, shelf, file);
  if (received) doc.openEntry(received.entry);
  else doc.openSoon(file, t.step(inWords(file.title)));
  const said = [
    received?.isNew === false ? t.again(inWords(received.entry.value.title)) : t.opened(inWords(file.title)),
    ...(hasOwn ? [t.kept] : []),
    ...changes.map((change) => t.changes[change]),
  ];
  shell.notify({
    text: said.filter(Boolean).join(' '),
    ...(hasOwn ? { action: { title: t.compare, run: () => compareWith(page, own) } } : {}),
  });
}

/** Changed since it was opened: no file and no ready skill has it. */
function isWork({ doc }: Page): boolean {
  const { done } = doc.history();
  return done.length > 0 && done.at(-1)?.opened === undefined;
}

function compareWith({ doc, shell }: Page, own: SkillFile): void {
  putVersion({ doc, shell }, { name: own.title, file: own, isKept: false }, t.compareStep(own.title));
  if (shell.tool() !== 'compare') shell.openTool('compare');
}

/** The open skill, where the shelf has not got it as it is, as an entry of its own. */
async function keepOpen({ doc, services }: Page, shelf: UserShelf): Promise<void> {
  const state = shelf.state();
  if (state === 'saved') return;
  const own = doc.chain();
  const file = state === 'changed' ? { ...own, title: shelfTexts.copyOf(own.title) } : own;
  try {
    const { entry } = await services.shelf.saveSkill(file, undefined, shelfTexts.copyElsewhere);
    if (file === own && doc.chain() === own) doc.setOrigin({ id: entry.id, revision: entry.revision });
    await shelf.reload();
  } catch {
    // undo has it
  }
}

/** As an entry beside the others, under a title of its own; where it is there already, that. Undefined where the browser keeps none. */
async function receive({ services }: Page, shelf: UserShelf, file: SkillFile): Promise<Received | undefined> {
  try {
    const there = (await services.shelf.list()).filter((e) => e.kind === 'skill');
    const same = there.find(({ value }) => isSameSkill(value, file));
    if (same) return { entry: same, isNew: false };
    const taken = new Set(there.map(nameOf));
    let { title } = file;
    for (let n = 1; taken.has(title); n++) title = t.another(file.title, n);
    const { entry } = await services.shelf.saveSkill({ ...file, title }, undefined, shelfTexts.copyElsewhere);
    await shelf.reload();
    return { entry, isNew: true };
  } catch {
    return undefined;
  }
}

/** But for its title, which is another where that was taken. */
const isSameSkill = (a: SkillFile, b: SkillFile): boolean =>
  JSON.stringify({ ...a, title: '' }) === JSON.stringify({ ...b, title: '' });
