// A static server for dist/. Run by itself: node src/cli/serve.mjs --port 4173
// Which file is meant is decided here, by the file that every link leads to; sirv sends it. Files are looked up when they
// are asked for: while a build replaces them a request may find nothing (404), afterwards it finds the new ones.
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';
import { contentSecurityPolicy } from '../offline/content-policy.mjs';
import { LauncherError, root } from './install.mjs';

/** sirv names the types of the others, and leaves the encoding of these open. */
const textTypes = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.txt': 'text/plain',
  '.md': 'text/plain',
};

const headers = {
  'content-security-policy': contentSecurityPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
};

const isHidden = (relative) => relative.split(/[\\/]/).some((part) => part.startsWith('.'));

/** The place in `dir` (a real path) of the file that a URL means, with every link followed; null where there is none. */
async function findFile(dir, url) {
  try {
    const wanted = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    if (isHidden(wanted)) return null;
    const file = await realpath(path.join(dir, wanted.endsWith('/') ? `${wanted}index.html` : wanted));
    const place = path.relative(dir, file);
    const isOutside = isHidden(place) || path.isAbsolute(place);
    return !isOutside && (await stat(file)).isFile() ? place.split(path.sep) : null;
  } catch {
    // no such file, a file as a folder, too long a name, a loop of links, a broken URL: nothing to give in any case
    return null;
  }
}

function makeAnswer(dir) {
  const send = sirv(dir, { dev: true, etag: true, extensions: [], brotli: true, gzip: true });
  const fail = (response, code, words) => {
    if (response.headersSent) return response.destroy();
    const body = `${words}\n`;
    response.writeHead(code, {
      'content-type': 'text/plain; charset=utf-8',
      'content-length': Buffer.byteLength(body),
      'cache-control': 'no-cache',
    });
    response.end(body);
  };
  return async (request, response) => {
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') return fail(response, 405, 'Only GET and HEAD');
    const place = await findFile(dir, request.url ?? '/');
    // the reader may have gone meanwhile
    if (response.destroyed) return;
    if (!place) return fail(response, 404, 'Not found');
    request.url = `/${place.map(encodeURIComponent).join('/')}`;
    // sirv misreads some ranges and fails on others; whole files are always allowed
    delete request.headers.range;
    // hashed names never change; everything else is asked for again
    const isHashed = place.includes('assets');
    response.setHeader('cache-control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
    const text = textTypes[path.extname(place.at(-1))];
    if (text) response.setHeader('content-type', `${text}; charset=utf-8`);
    // sirv leaves a file open whose reader goes, and does not hear of one that cannot be read
    response.once('pipe', (file) => {
      response.once('close', () => file.destroy());
      file.once('error', () => response.destroy());
    });
    try {
      send(request, response, () => fail(response, 404, 'Not found'));
    } catch {
      // gone since it was found
      fail(response, 404, 'Not found');
    }
  };
}

/** Listens on the first free port from `port` on (or on that one only) and resolves to { server, url }. */
export async function serveDist({ port = 4173, tries = 50, host = '127.0.0.1', dir = path.join(root, 'dist') } = {}) {
  const answer = makeAnswer(await realpath(dir));
  const server = createServer((request, response) => void answer(request, response));
  for (let next = port; next < port + tries; next += 1) {
    if (await listen(server, next, host)) return { server, url: `http://${host}:${server.address().port}/` };
  }
  throw new LauncherError(
    tries === 1 ? `Port ${port} is in use.` : `No free port between ${port} and ${port + tries - 1}.`,
  );
}

function listen(server, port, host) {
  return new Promise((resolve, reject) => {
    const onError = (error) => {
      server.off('listening', onListening);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const onListening = () => {
      server.off('error', onError);
      resolve(true);
    };
    server.once('error', onError).once('listening', onListening).listen(port, host);
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const at = process.argv.indexOf('--port');
  const { url } = await serveDist(at > 0 ? { port: Number(process.argv[at + 1]), tries: 1 } : {});
  console.log(url);
}
