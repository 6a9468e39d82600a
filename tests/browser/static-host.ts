/** Any static host: the build in a folder under a path, by the names of its files alone and without a header of ours, and what can go wrong with it. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect } from '@playwright/test';

const TYPES: Record<string, string> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  svg: 'image/svg+xml',
};

interface Way {
  /** ends what hangs */
  release(): void;
  pages: 'sent' | 'hang' | 'error';
  /** what of the files is not there */
  isMissing: (name: string) => boolean;
  /** every file is answered with this page, as a network does that asks for a password first */
  signIn?: string | undefined;
  /** but these */
  isSent: (name: string) => boolean;
}

export interface Host {
  readonly url: string;
  /** where the build lies, to be changed */
  readonly dir: string;
  readonly way: Way;
  close(): void;
}

/** `also`: more paths, each with a copy of its own, under the same origin. */
export async function serveBuild(
  at = '/club/bench/',
  also: readonly { at: string; dir: string }[] = [],
): Promise<Host> {
  const dir = copyBuild();
  const folders = [{ at, dir }, ...also];
  const hanging: ServerResponse[] = [];
  const way: Way = {
    pages: 'sent',
    isMissing: () => false,
    isSent: () => false,
    release: () => {
      for (const one of hanging.splice(0)) one.destroy();
    },
  };
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://x');
    const isPage = pathname === at;
    if (isPage && way.pages === 'hang') return void hanging.push(response);
    if (isPage && way.pages === 'error') return void response.writeHead(503).end('busy');
    const isAsked = way.signIn !== undefined && !way.isSent(pathname.slice(at.length));
    if (isAsked) return void response.writeHead(200, { 'content-type': 'text/html' }).end(way.signIn);
    try {
      const folder = folders.find((one) => pathname.startsWith(one.at));
      if (!folder) throw new Error('nothing there');
      const name = decodeURIComponent(pathname.slice(folder.at.length)) || 'index.html';
      if (way.isMissing(name)) throw new Error('missing');
      response.setHeader('content-type', TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream');
      response.end(readFileSync(path.join(folder.dir, name)));
    } catch {
      response.writeHead(404).end('none');
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}${at}`,
    dir,
    way,
    close: () => {
      way.release();
      server.closeAllConnections();
      server.close();
      for (const one of folders) rmSync(one.dir, { recursive: true });
    },
  };
}

export function copyBuild(): string {
  const dir = mkdtempSync(path.join(tmpdir(), 'shapeflight-host-'));
  cpSync(path.resolve(import.meta.dirname, '../../dist'), dir, { recursive: true });
  return dir;
}

/** The version that a build names in its page. */
export const versionIn = (dir: string): string =>
  /name="version" content="(\w+)"/.exec(readFileSync(path.join(dir, 'index.html'), 'utf8'))?.[1] ?? 'none';

/** The same files as another version. */
export function putVersion(dir: string, from: string, to: string): void {
  for (const name of ['index.html', 'service-worker.js']) {
    const text = readFileSync(path.join(dir, name), 'utf8');
    expect(text).toContain(from);
    writeFileSync(path.join(dir, name), text.replaceAll(from, to));
  }
}
