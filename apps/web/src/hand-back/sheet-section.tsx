import type { ReactElement, ReactNode } from 'react';

type SectionProps = { readonly heading: string; readonly children: ReactNode };

/** A section of the sheet; left out by its caller when there is nothing to say. */
export const SheetSection = ({ heading, children }: SectionProps): ReactElement => (
  <section>
    <h2>{heading}</h2>
    {children}
  </section>
);
