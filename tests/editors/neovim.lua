-- Drives the language server from Neovim as a maker would, and prints what came of it as JSON, one answer a line.
-- Called as: nvim --headless -u NONE -l/-S this file, with SEATWRIGHT_SERVER and SEATWRIGHT_FILE set.
local server = vim.env.SEATWRIGHT_SERVER
local path = vim.env.SEATWRIGHT_FILE

local function say(name, value)
  io.stdout:write(vim.fn.json_encode({ name = name, value = value }) .. "\n")
end

local function finish()
  vim.cmd("qa!")
end

local ok, fault = pcall(function()
  vim.cmd("edit " .. vim.fn.fnameescape(path))
  local buffer = vim.api.nvim_get_current_buf()
  vim.bo[buffer].filetype = "chair"
  local id = vim.lsp.start_client({
    name = "seatwright",
    cmd = { "node", server, "--stdio" },
    root_dir = vim.fn.fnamemodify(path, ":h"),
  })
  vim.lsp.buf_attach_client(buffer, id)
  local client = vim.lsp.get_client_by_id(id)
  vim.wait(20000, function() return client.initialized end, 20)

  local uri = vim.uri_from_bufnr(buffer)
  local function place(text, add)
    local line = vim.fn.search(text, "w") - 1
    local column = vim.fn.match(vim.fn.getline(line + 1), text)
    return { line = line, character = column + (add or 0) }
  end
  local function ask(method, params)
    local answer = vim.lsp.buf_request_sync(buffer, method, params, 20000)
    local mine = answer and answer[id]
    return mine and mine.result or vim.NIL
  end

  vim.wait(20000, function() return #vim.diagnostic.get(buffer) > 0 end, 20)
  say("diagnostics", vim.tbl_map(function(one)
    return { line = one.lnum, code = one.code, message = one.message, source = one.source }
  end, vim.diagnostic.get(buffer)))

  local document = { uri = uri }
  say("hover", ask("textDocument/hover", { textDocument = document, position = place("post back", 6) }))
  say("completion", ask("textDocument/completion", {
    textDocument = document, position = place("joined rail-tenon", 7), context = { triggerKind = 1 },
  }))

  local edit = ask("textDocument/rename", {
    textDocument = document, position = place("rail seat-front", 6), newName = "front-rail",
  })
  say("rename refused", edit == vim.NIL)

  -- Mend the fault, then what was refused is done.
  vim.fn.search("bak 452", "w")
  vim.cmd("s/bak 452/back   452/")
  vim.wait(20000, function() return #vim.diagnostic.get(buffer) == 0 end, 20)
  say("after mending", #vim.diagnostic.get(buffer))
  edit = ask("textDocument/rename", {
    textDocument = document, position = place("rail seat-front", 6), newName = "front-rail",
  })
  vim.lsp.util.apply_workspace_edit(edit, client.offset_encoding)
  local edits = ask("textDocument/formatting", {
    textDocument = document, options = { tabSize = 2, insertSpaces = true },
  })
  vim.lsp.util.apply_text_edits(edits, buffer, client.offset_encoding)
  say("text", table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), "\n"))
end)
if not ok then say("fault", tostring(fault)) end
finish()
