/** What a job in steps comes to, without stopping. */
export function finished<Answer>(job: Generator<number, Answer>): Answer {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
