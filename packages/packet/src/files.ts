/** One file of a packet, in memory. */
export interface PacketFile {
  /** Name relative to the packet's folder, `/` between folders. */
  readonly name: string;
  readonly content: string | Uint8Array;
}
