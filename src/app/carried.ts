/** What the built page carries beside itself: the one file that needs no server, and the licences of what it is made of. */

/** In the page that is one file its licences lie in it. */
const inPage = (): HTMLElement | null => document.getElementById('licences');

export const isOneFile = (): boolean => inPage() !== null;

export function saveOneFile(): void {
  const link = document.createElement('a');
  link.href = './shapeflight.html';
  link.download = 'shapeflight.html';
  link.click();
}

export function showLicences(): void {
  const own = inPage()?.textContent;
  const url = own == null ? './licences/licences.txt' : URL.createObjectURL(new Blob([own], { type: 'text/plain' }));
  window.open(url, '_blank', 'noopener');
}
