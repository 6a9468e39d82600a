/** A link in the address is taken as it comes, and opened by a part of the page that comes with the first of them. */
import { onCleanup } from 'solid-js';
import { listen } from '../ui/listen.ts';
import { loadPart } from './load-part.ts';
import type { Page } from './page.ts';
import type { UserShelf } from './shelf.ts';
import { texts } from './words.ts';

/** Any other fragment is not ours, and stays. */
const LINK = /^#w?\d{1,6}\./;

const loadOpening = loadPart(
  () => import('./received-link.ts'),
  (m) => m.openLink,
);

export function watchLinks(page: Page, shelf: UserShelf): void {
  let last = Promise.resolve();
  const take = (): void => {
    const { href, hash } = location;
    if (!LINK.test(hash)) return;
    // another load of the page finds what was made of it
    history.replaceState(history.state, '', href.slice(0, href.indexOf('#')));
    if (hash.startsWith('#w')) {
      page.shell.classDoor.give([{ name: texts.files.link, text: href }]);
      return;
    }
    last = last
      .then(loadOpening)
      .then((open) => open(page, shelf, href))
      .catch(() => {
        // so that a reload tries again
        history.replaceState(history.state, '', href);
        page.shell.notify({ text: texts.panelFailed });
      });
  };
  take();
  onCleanup(listen({ hashchange: take }));
}
