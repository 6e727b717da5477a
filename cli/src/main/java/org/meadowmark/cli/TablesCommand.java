package org.meadowmark.cli;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.reference.TableLibrary.Table;
import org.meadowmark.core.survey.ParametersTable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Prints a reference table. */
@Command(
    name = "tables",
    customSynopsis = "meadowmark tables [NAME] [OPTION]...",
    description = {
      "Prints a reference table as CSV, or the names of all.",
      "",
      "The tables hold every default, limit and rule that results depend on, each row with its"
          + " source. With --tables they are read from your folder, checked, and printed."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  meadowmark tables",
      "  meadowmark tables scar-causes > my-tables/scar-causes.csv",
      "  meadowmark tables severity-classes --tables my-tables"
    })
final class TablesCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "NAME",
      converter = TableName.class,
      description =
          "One of species, scar-causes, severity-classes, device-rules, fish-guilds, scar-recovery,"
              + " rhizome-elongation, parameters."
              + " Default: list the names.")
  private Table table;

  @Mixin private TablesOption tables;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    TableLibrary library = tables.library();
    ReferenceTablesReader.read(library);
    ParametersTable.read(library);
    PrintWriter out = spec.commandLine().getOut();
    if (table == null) {
      Arrays.stream(Table.values()).map(Table::key).forEach(out::println);
    } else {
      out.print(library.text(table));
    }
    return ExitCode.OK.value();
  }

  /** Understands the name of a table. */
  static final class TableName implements ITypeConverter<Table> {
    @Override
    public Table convert(String text) {
      return Arrays.stream(Table.values())
          .filter(t -> t.key().equals(text) || t.fileName().equals(text))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "no table '"
                          + text
                          + "'; use one of: "
                          + Arrays.stream(Table.values())
                              .map(Table::key)
                              .collect(Collectors.joining(", "))));
    }
  }
}
