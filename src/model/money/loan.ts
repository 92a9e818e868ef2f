/** A loan repaid once a year. In the years of grace only interest is paid. */
export interface Loan {
  readonly amount: number;
  /** Fraction a year. */
  readonly rate: number;
  /** Whole term, grace included. */
  readonly years: number;
  readonly graceYears: number;
  /** Equal parts of principal instead of equal payments. */
  readonly straightLine: boolean;
}

export interface LoanYear {
  readonly year: number;
  readonly opening: number;
  readonly interest: number;
  readonly principal: number;
  readonly payment: number;
  readonly closing: number;
}

/** Why a loan cannot be reckoned, in words; null when it can. */
export function loanFault({ amount, rate, years, graceYears }: Loan): string | null {
  if (!(amount >= 0)) return `the amount is ${amount}; it must be 0 or more`;
  if (!(rate >= 0)) return `the rate is ${rate}; it must be 0 or more`;
  if (!(years >= 1)) return `the term is ${years} years; it must be at least 1`;
  if (!(graceYears >= 0 && graceYears < years))
    return `the grace is ${graceYears} years of a term of ${years}; at least one year must be left to repay in`;
  return null;
}

/** Debt at the end of `year` (0: today). NaN where `loanFault` says why. */
export function loanBalance(
  amount: number,
  rate: number,
  years: number,
  graceYears: number,
  straightLine: boolean,
  year: number,
): number {
  if (amount === 0) return 0;
  const term = years - graceYears;
  if (!(amount > 0 && rate >= 0 && graceYears >= 0 && term > 0)) return Number.NaN;
  const paid = year - graceYears;
  if (paid <= 0) return amount;
  if (paid >= term) return 0;
  // Below this rate equal payments are equal parts to the last digit.
  if (straightLine || rate < 1e-12) return amount * (1 - paid / term);
  const growth = Math.log1p(rate);
  return (amount * Math.expm1((paid - term) * growth)) / Math.expm1(-term * growth);
}

/** The whole course of a loan, a row a year; empty where `loanFault` says why. */
export function loanSchedule(loan: Loan): LoanYear[] {
  if (loanFault(loan) !== null) return [];
  const { amount, rate, years, graceYears, straightLine } = loan;
  return Array.from({ length: Math.ceil(years) }, (_, k) => {
    const year = k + 1;
    const opening = loanBalance(amount, rate, years, graceYears, straightLine, k);
    const closing = loanBalance(amount, rate, years, graceYears, straightLine, year);
    const interest = opening * rate;
    const principal = opening - closing;
    return { year, opening, interest, principal, payment: interest + principal, closing };
  });
}
