import { useEffect, useState } from 'react';

type Size = { readonly width: number; readonly height: number };

const measured = (): Size => ({
  width: document.documentElement.clientWidth,
  height: document.documentElement.clientHeight,
});

/** The window in CSS pixels, followed as it changes. */
export const useWindowSize = (): Size => {
  const [size, setSize] = useState(measured);
  useEffect(() => {
    const follow = (): void => {
      setSize(measured());
    };
    addEventListener('resize', follow);
    return () => {
      removeEventListener('resize', follow);
    };
  }, []);
  return size;
};
