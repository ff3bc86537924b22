package org.seamtally.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The echo endpoints of load tests are built for load tests alone: here they are seen to fit the service as it is. */
class EchoSourcesTest {

    @TempDir
    private Path classes;

    @Test
    void theEchoCompiles() throws IOException {
        List<Path> sources;
        try (Stream<Path> files = Files.walk(Path.of("load-tests", "echo"))) {
            sources = files.filter(file -> file.toString().endsWith(".java")).toList();
        }
        assertTrue(sources.size() > 1, sources.toString());
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> said = new DiagnosticCollector<>();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(said, null, null)) {
            List<String> options = List.of(
                    "-proc:none", "-d", classes.toString(), "-classpath", System.getProperty("java.class.path"));
            boolean compiled = compiler.getTask(
                            null, files, said, options, null, files.getJavaFileObjectsFromPaths(sources))
                    .call();
            assertEquals(
                    "true",
                    compiled
                            + said.getDiagnostics().stream()
                                    .filter(one -> one.getKind() == javax.tools.Diagnostic.Kind.ERROR)
                                    .map(Object::toString)
                                    .reduce("", String::concat));
        }
    }
}
