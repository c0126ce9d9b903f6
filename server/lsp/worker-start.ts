// What the extension tells its worker before anything of the protocol: VS Code starts a worker so that it does not know its own address.

export interface WorkerStart {
  /** The address of the file with the rest of the server. */
  readonly allAnswers: string;
}

export function readStart(value: unknown): WorkerStart | undefined {
  return typeof value === 'object' && value !== null && 'allAnswers' in value && typeof value.allAnswers === 'string' ? { allAnswers: value.allAnswers } : undefined;
}
