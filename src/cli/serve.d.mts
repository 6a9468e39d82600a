import type { Server } from 'node:http';

export function serveDist(options?: {
  port?: number;
  tries?: number;
  host?: string;
  dir?: string;
}): Promise<{ server: Server; url: string }>;
