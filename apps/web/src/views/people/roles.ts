import type { Role } from '@handrail/wire/api/api-types';

export const ROLES: readonly Role[] = ['viewer', 'planner', 'approver', 'console', 'administrator'];

export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  viewer: 'reads',
  planner: 'writes versions',
  approver: 'says agreed or not',
  console: 'marks the day',
  administrator: 'keeps the accounts',
};
