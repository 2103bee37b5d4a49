/** Why a proof is refused. Thrown inside the checker alone; `checkProof` gives it back as data. */
export class ProofFault extends Error {
  override readonly name = 'ProofFault';
}
