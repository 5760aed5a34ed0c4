import { useEffect, useState } from 'react';

/** A value as it was when it last stood still for so many milliseconds; values that say the same are the same. */
export function useSettled<Value>(value: Value, pauseMs: number): Value {
  const [settled, setSettled] = useState(value);
  const text = JSON.stringify(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(JSON.parse(text)), pauseMs);
    return () => clearTimeout(timer);
  }, [text, pauseMs]);
  return settled;
}
