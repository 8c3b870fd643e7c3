"""Results on disk: written whole, read with distrust, compared value by value, tabled."""

from optimizer.results.compare import carried_differences, differences, document_differences
from optimizer.results.document import option_record, to_document
from optimizer.results.read import NEWEST, BudgetResult, Result, read_any, read_result, result_of
from optimizer.results.table import csv_table
from optimizer.results.versions import refuse_other_version, versions
from optimizer.results.write import ready_folder, to_text, write_whole

__all__ = [
    "NEWEST",
    "BudgetResult",
    "Result",
    "carried_differences",
    "csv_table",
    "differences",
    "document_differences",
    "option_record",
    "read_any",
    "read_result",
    "ready_folder",
    "refuse_other_version",
    "result_of",
    "to_document",
    "to_text",
    "versions",
    "write_whole",
]
