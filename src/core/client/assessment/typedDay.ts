import { z } from 'zod';

/** A day as it is typed: whether it exists and is not after today is for what reads it, which says so in words. */
export const typedDay = z.string().max(10, 'a day, yyyy-mm-dd');
