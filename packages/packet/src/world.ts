/** What the command may touch of the machine; tests give their own. */
export interface World {
  /** Words after the command's name. */
  readonly args: readonly string[];
  /** Results. */
  readonly out: (content: string | Uint8Array) => void;
  /** Messages, one line each. */
  readonly say: (line: string) => void;
  /** Whether messages go to a person at a terminal, who then sees progress. */
  readonly watched: boolean;
  /** Shows a passing line of progress in place of the last one. */
  readonly progress: (line: string) => void;
  /** The text of a file; rejects when there is none. */
  readonly readText: (path: string) => Promise<string>;
  /** Today, `YYYY-MM-DD`. */
  readonly today: () => string;
  /** Asks a person and gives the answer, trimmed. */
  readonly ask: (question: string) => Promise<string>;
  /** Becomes `aborted` when the person asks to stop; long work then ends with what it has. */
  readonly interrupted: { readonly aborted: boolean };
}
