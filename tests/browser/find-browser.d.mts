export const browserFlags: string[];
export const noWebglFlags: string[];
export function findBrowser(): Promise<string | null>;
export function ensureBrowser(): Promise<string>;
