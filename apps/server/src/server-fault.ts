import { API_ERRORS, type ApiErrorCode } from '@handrail/wire/api/api-errors';
import type { VersionWhole } from '@handrail/wire/api/api-types';

/** Ends a request with one of the published errors. */
export class ServerFault extends Error {
  readonly code: ApiErrorCode;
  readonly status: number;
  readonly advice: string;
  /** The version that stands, where a save met another one. */
  readonly head: VersionWhole | null;

  constructor(code: ApiErrorCode, message: string, head: VersionWhole | null = null) {
    super(message);
    this.name = 'ServerFault';
    this.code = code;
    [this.status, this.advice] = API_ERRORS[code];
    this.head = head;
  }
}
