// The packet as files in memory, and what it is made from
export type { PacketFile } from './files.ts';
export { packet, packetOf } from './packet.ts';

// Writing it, and the command
export { run } from './cli.ts';
export { FolderError, writeFolder } from './folder.ts';
export { STATUS, UsageError } from './status.ts';
export type { World } from './world.ts';
