/** Everything that the server refuses, with the status that it answers and what to do about it. The page of the docs is made from it. */
export const API_ERRORS = {
  'request/wrong-shape': [
    400,
    'A part of the request is missing, unknown or of the wrong sort; the message says where.',
  ],
  'request/not-readable': [400, 'The request is no HTTP or no JSON that can be read.'],
  'model/not-a-drawing': [
    400,
    'The bytes are no binary glTF 2.0 file, or say another length than they have. Export the drawing as .glb.',
  ],
  'session/not-signed-in': [
    401,
    'Sign in first; a session ends after 12 hours without use, after 7 days, and when the password changes.',
  ],
  'session/wrong-name-or-password': [
    401,
    'Name and password do not belong together. Which of the two is wrong is not said.',
  ],
  'session/not-allowed': [403, 'None of your roles may do this. An administrator gives roles.'],
  'session/wrong-password': [403, 'The password that was to be changed is another one.'],
  'session/account-is-locked': [403, 'An administrator has locked the account.'],
  'request/not-from-this-page': [
    403,
    'A request that writes comes from the page of this server and carries the header "x-handrail: 1".',
  ],
  'setup/wrong-token': [403, 'The first account is made with the token that the server printed on its terminal.'],
  'campaign/unknown': [404, 'There is no campaign of this id.'],
  'version/unknown': [404, 'The campaign has no version of this number.'],
  'user/unknown': [404, 'There is no account of this id.'],
  'model/unknown': [404, 'The campaign has no drawing of this name.'],
  'request/unknown-path': [
    404,
    'Nothing is at this path, or not for this method. GET /api/openapi.json lists everything.',
  ],
  'setup/already-done': [409, 'There is an administrator already. Further accounts are made by them.'],
  'user/name-is-taken': [409, 'Another account has this name; upper and lower case do not tell names apart.'],
  'user/last-administrator': [409, 'Somebody has to keep the accounts: make another administrator first.'],
  'session/no-accounts-here': [
    409,
    'One file is open on this machine, for one person: there are no accounts. "handrail serve" has them.',
  ],
  'campaign/one-file-is-open': [
    409,
    'One file is open. "handrail serve FOLDER" serves as many campaigns as there are.',
  ],
  'version/parent-is-not-head': [
    409,
    'Somebody saved meanwhile, or the file was changed outside. Nothing was written; the answer carries the version that stands.',
  ],
  'request/too-large': [
    413,
    'The request is larger than anything that is kept. Texts reach to 4 million characters, drawings to 32 MB.',
  ],
  'request/wrong-media-type': [415, 'Requests are JSON, drawings are model/gltf-binary.'],
  'request/wrong-host': [
    421,
    'The server was asked for by a name that is not its own. Use the address that it printed, or say --public-address.',
  ],
  'session/too-many-tries': [429, 'Ten wrong passwords in a row lock a name for 15 minutes.'],
  'request/too-many': [429, 'More requests in a minute than a person makes. Wait a minute.'],
  'server/failed': [
    500,
    'A fault of the program. It is in the log of the server under the number that the message gives.',
  ],
  'file/cannot-be-written': [
    507,
    'The campaign file could not be written, so nothing was saved. Free space or give the server the right to write, then save again.',
  ],
} as const satisfies Readonly<Record<string, readonly [status: number, advice: string]>>;

export type ApiErrorCode = keyof typeof API_ERRORS;
