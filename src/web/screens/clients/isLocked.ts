import { Problem } from '../../api.ts';

/** The door says it by itself. */
export function isLocked(fault: unknown): boolean {
  return fault instanceof Problem && fault.code === 'clients-locked';
}
