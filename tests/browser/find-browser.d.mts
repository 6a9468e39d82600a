export const browserFlags: readonly string[];
export const noWebglFlags: readonly string[];
export function findBrowser(): Promise<string | null>;
export function ensureBrowser(): Promise<string>;
