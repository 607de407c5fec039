import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** Width of an element in whole CSS pixels, followed as it changes; 0 until it is laid out. */
export const useMeasuredWidth = <T extends HTMLElement>(): [RefObject<T | null>, number] => {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const measure = (): void => {
      setWidth(Math.floor(element.clientWidth));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, []);
  return [ref, width];
};
