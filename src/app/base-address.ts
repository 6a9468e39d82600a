/** Where this bench is found: set in Menu, else the page's own address where others can reach it. A link begins with it. */
import { createSignal } from 'solid-js';
import { readStored, writeStored } from '../ui/stored.ts';

const KEY = 'shapeflight.address';

/** Of this machine alone: no other could follow it. */
const LOCAL = /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/;

/** Without search and fragment; undefined where it is none that another machine could open. */
export function tidyAddress(text: string): string | undefined {
  try {
    const { protocol, hostname, origin, pathname } = new URL(text.trim());
    return /^https?:$/.test(protocol) && hostname !== '' ? origin + pathname : undefined;
  } catch {
    return undefined;
  }
}

export function pageAddress(href: string): string | undefined {
  const address = tidyAddress(href);
  return address === undefined || LOCAL.test(new URL(address).hostname) ? undefined : address;
}

const [own, setOwn] = createSignal(tidyAddress(readStored(KEY) ?? ''));

export const ownAddress = own;
/** undefined: the page's own again */
export function setOwnAddress(address: string | undefined): void {
  setOwn(address);
  writeStored(KEY, address ?? '');
}
export const baseAddress = (): string | undefined => own() ?? pageAddress(globalThis.location?.href ?? '');
