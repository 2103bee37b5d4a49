import type { InputHTMLAttributes } from 'react';

type TextFieldProps = Omit<InputHTMLAttributes<HTMLInputElement>, 'onChange' | 'value'> & {
  readonly label: string;
  readonly words: string;
  readonly onWords: (words: string) => void;
};

/** A line of words that a form cannot do without, with its label. */
export function TextField({ label, words, onWords, ...more }: TextFieldProps) {
  return (
    <label>
      {label}
      <input value={words} required onChange={(event) => onWords(event.target.value)} {...more} />
    </label>
  );
}
