package bendline;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules of the house that only the source shows: size, Javadoc, and words that must not stand there. */
class SourceRulesTest {

    private static final int FILE_LINES = 400;
    private static final int METHOD_LINES = 60;

    private static List<Path> main;
    private static List<Path> all;
    private static final List<String> LONG_METHODS = new ArrayList<>();
    private static final List<String> WITHOUT_JAVADOC = new ArrayList<>();
    private static int methodsSeen;

    @BeforeAll
    static void parse() throws IOException {
        main = javaFiles("src/main/java");
        all = Stream.concat(main.stream(), javaFiles("src/test/java").stream()).toList();
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(main));
            for (CompilationUnitTree unit : task.parse()) {
                new Look(DocTrees.instance(task), unit).scan(unit, null);
            }
        }
    }

    private static List<Path> javaFiles(String folder) throws IOException {
        try (Stream<Path> walk = Files.walk(Path.of(folder))) {
            return walk.filter(p -> p.toString().endsWith(".java")).sorted().toList();
        }
    }

    @Test
    void theSourceIsFound() {
        assertThat(main).hasSizeGreaterThan(20);
        assertThat(methodsSeen).isGreaterThan(100);
    }

    @Test
    void filesStayReadable() throws IOException {
        List<String> tooLong = new ArrayList<>();
        for (Path file : all) {
            long lines = Files.readAllLines(file).size();
            if (lines > FILE_LINES) {
                tooLong.add(file + ": " + lines + " lines");
            }
        }
        assertThat(tooLong).as("files over " + FILE_LINES + " lines").isEmpty();
    }

    @Test
    void methodsStayReadable() {
        assertThat(LONG_METHODS).as("methods over " + METHOD_LINES + " lines").isEmpty();
    }

    @Test
    void whatIsPublicIsDescribed() {
        assertThat(WITHOUT_JAVADOC).as("public without Javadoc").isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"TODO", "FIXME", "@Disabled", "org[.]mockito", "\"/tmp/|\"/work/"})
    void nothingIsLeftUndoneOrTiedToOneMachine(String words) throws IOException {
        Pattern pattern = Pattern.compile(words);
        List<Path> found = new ArrayList<>();
        for (Path file : all) {
            if (!file.endsWith("SourceRulesTest.java")
                    && pattern.matcher(Files.readString(file)).find()) {
                found.add(file);
            }
        }
        assertThat(found).isEmpty();
    }

    /** Walks one file. */
    private static final class Look extends TreePathScanner<Void, Void> {

        private final DocTrees docs;
        private final CompilationUnitTree unit;

        Look(DocTrees docs, CompilationUnitTree unit) {
            this.docs = docs;
            this.unit = unit;
        }

        @Override
        public Void visitClass(ClassTree node, Void unused) {
            if (isPublic(getCurrentPath()) && docs.getDocCommentTree(getCurrentPath()) == null) {
                WITHOUT_JAVADOC.add(at(node) + " " + node.getSimpleName());
            }
            return super.visitClass(node, unused);
        }

        @Override
        public Void visitMethod(MethodTree node, Void unused) {
            methodsSeen++;
            if (node.getBody() != null && lines(node) > METHOD_LINES) {
                LONG_METHODS.add(at(node) + " " + node.getName() + ": " + lines(node) + " lines");
            }
            boolean overrides = node.getModifiers().getAnnotations().stream()
                    .anyMatch(a -> a.getAnnotationType().toString().equals("Override"));
            DocCommentTree comment = docs.getDocCommentTree(getCurrentPath());
            if (isPublic(getCurrentPath()) && !overrides && comment == null) {
                WITHOUT_JAVADOC.add(at(node) + " " + node.getName());
            }
            return super.visitMethod(node, unused);
        }

        /** Public itself and in public types only; members of an interface are public without the word. */
        private static boolean isPublic(TreePath path) {
            for (TreePath p = path; p != null; p = p.getParentPath()) {
                boolean inInterface = p.getParentPath() != null
                        && p.getParentPath().getLeaf() instanceof ClassTree outer
                        && outer.getKind() == Tree.Kind.INTERFACE;
                if (p.getLeaf() instanceof ClassTree type
                        && !inInterface
                        && !type.getModifiers().getFlags().contains(Modifier.PUBLIC)) {
                    return false;
                }
                if (p.getLeaf() instanceof MethodTree method
                        && !inInterface
                        && !method.getModifiers().getFlags().contains(Modifier.PUBLIC)) {
                    return false;
                }
            }
            return true;
        }

        private long lines(MethodTree node) {
            return line(docs.getSourcePositions().getEndPosition(unit, node.getBody()))
                    - line(docs.getSourcePositions().getStartPosition(unit, node.getBody()))
                    - 1;
        }

        private long line(long position) {
            return unit.getLineMap().getLineNumber(position);
        }

        private String at(Tree node) {
            return unit.getSourceFile().getName() + ":"
                    + line(docs.getSourcePositions().getStartPosition(unit, node));
        }
    }
}
