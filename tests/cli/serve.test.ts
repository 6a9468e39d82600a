// The server of the built page: nothing that is asked of it ends it, and it gives nothing but the files of its folder.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readlinkSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { serveDist } from '../../src/cli/serve.mjs';
import { contentSecurityPolicy } from '../../src/offline/content-policy.mjs';

const top = mkdtempSync(path.join(tmpdir(), 'shapeflight-serve-'));
const dir = path.join(top, 'dist');
const LARGE = 8 * 1024 * 1024;
let served: Awaited<ReturnType<typeof serveDist>>;

beforeAll(async () => {
  mkdirSync(path.join(dir, 'assets'), { recursive: true });
  writeFileSync(path.join(top, 'secret.txt'), 'secret');
  writeFileSync(path.join(dir, 'index.html'), '<title>Page</title>');
  writeFileSync(path.join(dir, '.built-from'), 'digest');
  writeFileSync(path.join(dir, 'manifest.webmanifest'), '{}');
  writeFileSync(path.join(dir, 'word list.txt'), 'ä');
  writeFileSync(path.join(dir, 'assets/app-1a2b3c.js'), 'export {};');
  writeFileSync(path.join(dir, 'assets/app-1a2b3c.js.br'), 'by brotli');
  writeFileSync(path.join(dir, 'assets/app-1a2b3c.js.gz'), 'by gzip');
  writeFileSync(path.join(dir, 'large.bin'), Buffer.alloc(LARGE, 1));
  symlinkSync('loop-b', path.join(dir, 'loop-a'));
  symlinkSync('loop-a', path.join(dir, 'loop-b'));
  symlinkSync('.', path.join(dir, 'round'));
  symlinkSync('../secret.txt', path.join(dir, 'leaves.txt'));
  symlinkSync('..', path.join(dir, 'above'));
  symlinkSync('.built-from', path.join(dir, 'hidden.txt'));
  symlinkSync('assets/app-1a2b3c.js', path.join(dir, 'within.js'));
  served = await serveDist({ port: 21_000 + (process.pid % 10_000), dir });
});
afterAll(() => {
  served.server.close();
  served.server.closeAllConnections();
  rmSync(top, { recursive: true });
});

/** What is asked, byte for byte: fetch would tidy the path first. */
function ask(target: string, { method = 'GET', head = [] as string[] } = {}) {
  return new Promise<{ code: number; headers: Record<string, string>; body: string }>((done, fail) => {
    const socket = connect(Number(new URL(served.url).port), '127.0.0.1');
    let text = '';
    socket.setEncoding('latin1').on('data', (data) => {
      text += data;
    });
    socket.on('error', fail).on('close', () => {
      const [top = '', body = ''] = [text.slice(0, text.indexOf('\r\n\r\n')), text.slice(text.indexOf('\r\n\r\n') + 4)];
      const [first, ...lines] = top.split('\r\n');
      const headers = Object.fromEntries(
        lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 2)]),
      );
      done({ code: Number(first.split(' ')[1]), headers, body });
    });
    socket.write(
      `${[`${method} ${target} HTTP/1.1`, 'Host: localhost', 'Connection: close', ...head].join('\r\n')}\r\n\r\n`,
    );
  });
}

it('npm start needs no package before it has installed them', () => {
  const bare = path.join(top, 'bare/src/cli');
  cpSync(path.resolve(import.meta.dirname, '../../src/cli'), bare, { recursive: true });
  // what it is asked is looked at first: this ends before anything is installed
  const { status, stderr } = spawnSync(process.execPath, [path.join(bare, 'start.mjs'), '--port', '0'], {
    encoding: 'utf8',
  });
  expect([status, stderr.trim()]).toEqual([1, '--port is 0; it must be a whole number from 1 to 65535.']);
});

describe('the server', () => {
  it('gives the page, uncached, with its policy', async () => {
    for (const target of ['/', '/index.html', '/?v=1', '/index.html?x#y']) {
      const { code, headers, body } = await ask(target);
      expect([code, body]).toEqual([200, '<title>Page</title>']);
      expect(headers).toMatchObject({
        'content-type': 'text/html; charset=utf-8',
        'content-length': '19',
        'cache-control': 'no-cache',
        'content-security-policy': contentSecurityPolicy,
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
      });
    }
  });

  it('names types, and lets files with a digest in their name be kept', async () => {
    const script = await ask('/assets/app-1a2b3c.js');
    expect(script.headers).toMatchObject({
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'public, max-age=31536000, immutable',
      'content-security-policy': contentSecurityPolicy,
    });
    expect((await ask('/manifest.webmanifest')).headers['content-type']).toBe('application/manifest+json');
    expect((await ask('/word%20list.txt')).headers['content-type']).toBe('text/plain; charset=utf-8');
    expect((await ask('/within.js')).code).toBe(200);
  });

  it('a page that has not changed is not sent again', async () => {
    const { etag } = (await ask('/')).headers;
    const again = await ask('/', { head: [`If-None-Match: ${etag}`] });
    expect([again.code, again.body]).toEqual([304, '']);
    expect(again.headers['content-security-policy']).toBe(contentSecurityPolicy);
  });

  it('sends what lies there compressed to whom it may, and says so', async () => {
    for (const [accept, encoding, body] of [
      ['gzip, deflate, br', 'br', 'by brotli'],
      ['gzip', 'gzip', 'by gzip'],
      ['identity', undefined, 'export {};'],
    ] as const) {
      const answer = await ask('/assets/app-1a2b3c.js', { head: [`Accept-Encoding: ${accept}`] });
      expect([answer.code, answer.headers['content-encoding'], answer.body]).toEqual([200, encoding, body]);
      expect(answer.headers).toMatchObject({
        'content-type': 'text/javascript; charset=utf-8',
        'cache-control': 'public, max-age=31536000, immutable',
        vary: 'Accept-Encoding',
      });
    }
  });

  it('HEAD has the headers and no body', async () => {
    const { code, headers, body } = await ask('/', { method: 'HEAD' });
    expect([code, headers['content-length'], body]).toEqual([200, '19', '']);
  });

  it.each([
    ['a file as a folder', '/index.html/'],
    ['a file as a folder, deeper', '/index.html/x/y.js'],
    ['a name of over 255 characters', `/${'a'.repeat(300)}`],
    ['a path of over 4096 characters', `/${'a/'.repeat(3000)}`],
    ['a loop of links', '/loop-a'],
    ['a loop of links as a folder', '/loop-a/'],
    ['a link to a file outside', '/leaves.txt'],
    ['a link to a folder outside', '/above/secret.txt'],
    ['a link to a hidden file', '/hidden.txt'],
    ['a hidden file', '/.built-from'],
    ['a hidden file, encoded', '/%2ebuilt-from'],
    ['the folder above', '/../secret.txt'],
    ['the folder above, encoded', '/%2e%2e/secret.txt'],
    ['the folder above, slashes encoded', '/..%2fsecret.txt'],
    ['the folder above, twice encoded', '/%252e%252e/secret.txt'],
    ['the folder above, backslashes', '/..\\secret.txt'],
    ['a path from the root', '//etc/passwd'],
    ['a zero byte', '/index.html%00'],
    ['a broken encoding', '/%E0%A4%A'],
    ['no path', '*'],
    ['a folder without an index', '/assets/'],
    ['a folder without a slash', '/assets'],
    ['the page without its ending', '/index'],
    ['nothing there', '/nothing.js'],
    ['another host', 'http://elsewhere/nothing.js'],
  ])('%s is not found, and the server goes on', async (_, target) => {
    const { code, headers, body } = await ask(target);
    expect([code, body]).toEqual([404, 'Not found\n']);
    expect(headers['content-security-policy']).toBe(contentSecurityPolicy);
    expect((await ask('/')).code).toBe(200);
  });

  it('a link round the folder leads to its files', async () => {
    expect((await ask('/round/round/index.html')).code).toBe(200);
  });

  it('other methods are refused', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) expect((await ask('/', { method })).code).toBe(405);
  });

  it.each([
    'bytes=0-4',
    'bytes=5-2',
    'bytes=-5',
    'bytes=99-',
    'bytes=0-1,3-4',
    'bytes=9-9999',
    'words=0-1',
    'bytes=x-',
  ])('a range (%s) is answered with the whole file', async (range) => {
    const { code, headers, body } = await ask('/', { head: [`Range: ${range}`] });
    expect([code, body]).toEqual([200, '<title>Page</title>']);
    expect(headers['content-range']).toBeUndefined();
  });

  it('bytes that are no request are refused', async () => {
    const code = await new Promise<string>((done) => {
      const socket = connect(Number(new URL(served.url).port), '127.0.0.1');
      socket.setEncoding('latin1').once('data', (data) => done(String(data).slice(0, 12)));
      socket.write('\x16\x03\x01 nonsense\r\n\r\n');
    });
    expect(code).toBe('HTTP/1.1 400');
    expect((await ask('/')).code).toBe(200);
  });

  it.runIf(process.platform === 'linux')('300 downloads that are broken off leave no file open', async () => {
    const countOpen = (): number =>
      readdirSync('/proc/self/fd').filter((fd) => {
        try {
          return readlinkSync(`/proc/self/fd/${fd}`).endsWith('large.bin');
        } catch {
          return false;
        }
      }).length;
    const breakOff = () =>
      new Promise<void>((done) => {
        const socket = connect(Number(new URL(served.url).port), '127.0.0.1');
        socket.once('data', () => socket.destroy()).on('close', () => done());
        socket.write('GET /large.bin HTTP/1.1\r\nHost: localhost\r\n\r\n');
      });
    for (let i = 0; i < 300; i += 20) await Promise.all(Array.from({ length: 20 }, breakOff));
    await vi.waitFor(() => expect(countOpen()).toBe(0), 5000);
    expect((await ask('/large.bin')).body.length).toBe(LARGE);
  });

  it('serves what a build puts there later, and answers while a file goes', async () => {
    writeFileSync(path.join(dir, 'assets/app-later.js'), 'export const later = 1;');
    expect((await ask('/assets/app-later.js')).body).toBe('export const later = 1;');
    rmSync(path.join(dir, 'assets/app-later.js'));
    expect((await ask('/assets/app-later.js')).code).toBe(404);
  });

  it('takes the next port where one is taken, and says so where only that one was asked for', async () => {
    const port = Number(new URL(served.url).port);
    const second = await serveDist({ port, dir });
    expect(Number(new URL(second.url).port)).toBeGreaterThan(port);
    second.server.close();
    await expect(serveDist({ port, tries: 1, dir })).rejects.toThrow(`Port ${port} is in use.`);
  });
});
