package bendline.simulate;

/** Solves small symmetric positive definite systems in place; one factor serves many right sides. */
final class CholeskySolver {

    private final int n;
    /** Lower triangle of the matrix, row by row; overwritten by its factor. */
    final double[][] a;

    CholeskySolver(int n) {
        this.n = n;
        this.a = new double[n][n];
    }

    /** Overwrites the right side with the solution; the matrix must have been factored. */
    void solve(double[] b) {
        for (int i = 0; i < n; i++) {
            double sum = b[i];
            for (int k = 0; k < i; k++) {
                sum -= a[i][k] * b[k];
            }
            b[i] = sum / a[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            b[i] /= a[i][i];
            double[] row = a[i];
            for (int k = 0; k < i; k++) {
                b[k] -= row[k] * b[i];
            }
        }
    }

    /** Overwrites the matrix with its factor. */
    void factor() {
        for (int i = 0; i < n; i++) {
            double[] ai = a[i];
            for (int j = 0; j < i; j++) {
                double[] aj = a[j];
                double sum = ai[j];
                for (int k = 0; k < j; k++) {
                    sum -= ai[k] * aj[k];
                }
                ai[j] = sum / aj[j];
            }
            double d = ai[i];
            for (int k = 0; k < i; k++) {
                d -= ai[k] * ai[k];
            }
            ai[i] = Math.sqrt(d);
        }
    }
}
