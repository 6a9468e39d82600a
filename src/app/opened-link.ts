/** Opens a skill that comes in the address, beside one's own: never in its place, and the same one once. */
import { onCleanup } from 'solid-js';
import type { Handed, SkillFile } from '../../sim/index.ts';
import { listen } from '../ui/listen.ts';
import { linkTexts as t } from './link-words.ts';
import type { Page } from './page.ts';
import { putVersion } from './put-version.ts';
import { wordFault } from './say/fault-words.ts';
import type { UserShelf } from './shelf.ts';

/** Any other fragment is not ours, and stays. */
const LINK = /^#\d{1,6}\./;

export function watchLinks(page: Page, shelf: UserShelf): void {
  let last = Promise.resolve();
  const take = (): void => {
    const { href, hash } = location;
    if (!LINK.test(hash)) return;
    // another load of the page finds what was made of it
    history.replaceState(history.state, '', href.slice(0, href.indexOf('#')));
    last = last.then(() => openLink(page, shelf, href));
  };
  take();
  onCleanup(listen({ hashchange: take }));
}

async function openLink(page: Page, shelf: UserShelf, href: string): Promise<void> {
  const { doc, services } = page;
  let handed: Handed;
  try {
    handed = (await services.load.handing()).readSkillLink(href);
    doc.check(handed.file);
  } catch (error) {
    doc.refuse({ name: t.link, reason: `${wordLinkFault(error)}.` });
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
  if (isWork(page)) await shelf.keepOpen();
  const received = await shelf.receive(file, t.another);
  if (received) doc.openEntry(received.entry);
  else doc.openSoon(file, t.step(file.title));
  const said = [
    received?.isNew === false ? t.again(received.entry.value.title) : t.opened(file.title),
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
