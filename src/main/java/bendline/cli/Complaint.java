package bendline.cli;

import bendline.analysis.SetupException;
import bendline.book.BookException;
import bendline.compare.ComparisonException;
import bendline.footage.FootageException;
import bendline.report.AnalysisFileException;
import bendline.report.OutputFolderException;
import picocli.CommandLine.ParameterException;

/** The one place that turns an exception into a sentence for the user and an exit status. */
record Complaint(String sentence, int status) {

    static Complaint about(Throwable problem) {
        if (problem instanceof ParameterException) {
            return new Complaint(sentence(problem.getMessage()), ExitStatus.WRONG_USE);
        }
        if (problem instanceof SetupException || problem instanceof OutputFolderException) {
            return new Complaint(problem.getMessage(), ExitStatus.WRONG_USE);
        }
        if (problem instanceof FootageException
                || problem instanceof SimulateCommand.UnusableScenario
                || problem instanceof BookException
                || problem instanceof ComparisonException
                || problem instanceof AnalysisFileException) {
            return new Complaint(problem.getMessage(), ExitStatus.UNUSABLE_INPUT);
        }
        if (problem instanceof OutOfMemoryError) {
            return new Complaint(
                    "The program ran out of memory; give it more, for example java -Xmx2g -jar bendline.jar.",
                    ExitStatus.FAILED);
        }
        return new Complaint(
                "The program failed (" + problem.getClass().getSimpleName() + ": " + problem.getMessage()
                        + "); run it again with --verbose and report what it prints.",
                ExitStatus.FAILED);
    }

    /** The option parser's own texts are no sentences and give no advice. */
    private static String sentence(String text) {
        String plain = text.replace(
                " is not a double",
                " is no plain number: write it without a unit, in the one that the option asks for");
        return text.endsWith(".") || text.endsWith("?") ? text : plain + "; see the command's --help.";
    }
}
