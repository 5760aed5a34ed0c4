import { useState } from 'react';

/** A value as it was when it last was there. */
export function useLast<Value>(value: Value | undefined): Value | undefined {
  const [last, setLast] = useState(value);
  if (value !== undefined && value !== last) setLast(value);
  return value ?? last;
}
