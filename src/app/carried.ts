/** What the built page carries beside itself: the one file that needs no server, and the licences of what it is made of. */

/** In the page that is one file its licences lie in it. */
const inPage = (): HTMLElement | null => document.getElementById('licences');

export const isOneFile = (): boolean => inPage() !== null;

/** False where the server cannot be reached or has no such file: the copy kept for a gym without a network does not hold it. */
export async function saveOneFile(): Promise<boolean> {
  const href = './shapeflight.html';
  const answer = await fetch(href, { method: 'HEAD', cache: 'no-store' }).catch(() => undefined);
  if (!answer?.ok) return false;
  const link = document.createElement('a');
  link.href = href;
  link.download = 'shapeflight.html';
  link.click();
  return true;
}

export function showLicences(): void {
  const own = inPage()?.textContent;
  const url = own == null ? './licences/licences.txt' : URL.createObjectURL(new Blob([own], { type: 'text/plain' }));
  window.open(url, '_blank', 'noopener');
}
